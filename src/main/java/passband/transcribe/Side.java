package passband.transcribe;

/** An end of the accepted range. */
enum Side {
  LOWER,
  UPPER
}

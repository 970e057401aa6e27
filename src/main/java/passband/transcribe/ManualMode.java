package passband.transcribe;

/**
 * A mode of a manual's table.
 *
 * @param outlet the title of its outlet; empty where the table names none
 * @param title its own title
 */
record ManualMode(String outlet, String title) {}

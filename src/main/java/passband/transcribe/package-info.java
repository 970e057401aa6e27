/** From a service manual's table of limits to the rule behind them, its misprints and a draft. */
@NullMarked
package passband.transcribe;

import org.jspecify.annotations.NullMarked;

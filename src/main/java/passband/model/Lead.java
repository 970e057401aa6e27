package passband.model;

import passband.quantity.Rational;
import passband.syntax.Word;

/**
 * A wire or a jumper.
 *
 * @param link whether it is a jumper between two jacks
 * @param rated the highest peak voltage, in volts; null when not known
 * @param colour null when not given
 */
public record Lead(
    boolean link, Word name, String title, Rational rated, String ratedText, String colour) {}

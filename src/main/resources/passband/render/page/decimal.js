// Numbers with the decimal mark of the sheet's language (COMMA).
const sign = "[+\\-\u2212]?";
const comma = new RegExp("^" + sign + "\\d+,\\d+$");
const groups = new RegExp("^" + sign + "\\d{1,3}\\.\\d{3}$");
// Whether a point may stand between thousands: then it is not taken for a decimal mark.
const unsure = (text) => COMMA && groups.test(text);
// With a decimal point, as it is judged and saved; what is no such number stays as it is.
const plain = (text) => (COMMA && comma.test(text) ? text.replace(",", ".") : text);
// As people read it.
const shown = (text) => (COMMA && /^\S*\d\.\d+$/.test(text) ? text.replace(".", ",") : text);
// Of a file: as the judge reads it (DecimalMark); what may be two numbers is none.
const thousands = new RegExp("^" + sign + "[1-9]\\d{0,2}[.,]\\d{3}$");
function loaded(text, semicolons) {
  const both = COMMA && semicolons;
  if (thousands.test(text) && (both ? text.includes(".") : text.includes(","))) {
    return text + " ?";
  }
  return shown((COMMA || semicolons) && comma.test(text) ? text.replace(",", ".") : text);
}

export { loaded, unsure, plain, shown };

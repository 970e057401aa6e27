// The sentences of the page in the sheet's language (WORDS), and its decimal mark (COMMA).
const words = (text, values) => text.replace(/\{(\w+)\}/g, (_, name) => values[name]);
const fail = (text, values) => {
  throw new Error(words(text, values));
};
const verdictWord = (verdict) => VERDICT_WORDS[verdict] || verdict;

export { words, fail, verdictWord };

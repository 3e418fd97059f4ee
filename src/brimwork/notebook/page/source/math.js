// Formulas between dollar signs, set by KaTeX from files of our own.
import "katex/dist/katex.css";
import render from "katex/contrib/auto-render";

const DELIMITERS = [
  { left: "$$", right: "$$", display: true },
  { left: "\\[", right: "\\]", display: true },
  { left: "$", right: "$", display: false },
  { left: "\\(", right: "\\)", display: false },
];
export const typeset = (element) => render(element, { delimiters: DELIMITERS, throwOnError: false, strict: "ignore", trust: false, ignoredClasses: ["katex"] });

// Ties the words of a question to whatever takes its answer, for those who have a page read to them: boxes and lists by description, choices as a named group.
let made = 0;
const named = (one) => (one.id ||= `asked-${++made}`);
function render({ el }) {
  const tie = () => {
    const part = el.closest(".brimwork"), asked = part?.querySelector(".brimwork-asked");
    if (!asked) return;
    const mine = (one) => one.closest(".brimwork") === part;
    for (const box of part.querySelectorAll("input[type=text], textarea, select")) if (mine(box)) box.setAttribute("aria-describedby", named(asked));
    for (const group of part.querySelectorAll(".widget-radio-box")) {
      const label = group.parentElement.querySelector(":scope > .widget-label");
      if (!mine(group)) continue;
      group.setAttribute("role", "radiogroup");
      group.setAttribute("aria-labelledby", [asked, label].filter(Boolean).map(named).join(" "));
    }
  };
  let changes;
  const begin = () => {
    const part = el.closest(".brimwork");
    if (!part) return;
    tie();
    changes = new MutationObserver(tie);
    changes.observe(part, { childList: true, subtree: true });
  };
  const soon = requestAnimationFrame(() => requestAnimationFrame(begin));
  return () => {
    cancelAnimationFrame(soon);
    changes?.disconnect();
  };
}
export default { render };

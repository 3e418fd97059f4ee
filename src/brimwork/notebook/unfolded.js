// What a reader has unfolded in the outputs of a cell stays so when they are drawn again.
function render({ el }) {
  const unfolded = new Set();
  const name = (details) => details.dataset.name ?? details.querySelector("summary").textContent;
  const drawn = new MutationObserver((changes) => {
    for (const { addedNodes } of changes) {
      for (const node of addedNodes) for (const details of node.querySelectorAll?.("details") ?? []) details.open ||= unfolded.has(name(details));
    }
  });
  const turned = ({ target }) => {
    const area = el.closest(".jp-OutputArea");
    if (!target.matches("details") || !area?.contains(target)) return;
    unfolded[target.open ? "add" : "delete"](name(target));
    drawn.observe(area, { childList: true, subtree: true });
  };
  document.addEventListener("toggle", turned, true);
  return () => {
    document.removeEventListener("toggle", turned, true);
    drawn.disconnect();
  };
}
export default { render };

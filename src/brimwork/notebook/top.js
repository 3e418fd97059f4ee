// Brings the page back to its top once a run of all cells has ended, unless its reader has gone elsewhere meanwhile.
const SETTLED = 700; // ms without a cell that waits
function render({ el }) {
  let stopped = false;
  const begin = () => {
    const panel = el.closest(".jp-NotebookPanel"), cell = el.closest(".jp-Cell");
    if (!panel || !cell) return;
    const waiting = () => [...panel.querySelectorAll(".jp-InputPrompt")].filter((one) => one.textContent.includes("*")).length;
    if (waiting() < 3) return; // this cell alone was run
    const scrolled = [...panel.querySelectorAll(".jp-WindowedPanel-outer, .jp-Notebook")].find((one) => one.scrollHeight > one.clientHeight);
    const gone = () => (stopped = true);
    for (const act of ["wheel", "keydown", "pointerdown"]) panel.addEventListener(act, gone, { once: true });
    let still = 0;
    const look = () => {
      if (stopped || !el.isConnected) return;
      still = waiting() ? 0 : still + 100;
      if (scrolled && still) scrolled.scrollTop = 0;
      if (still < SETTLED) setTimeout(look, 100);
    };
    setTimeout(look, 100);
  };
  setTimeout(begin, 0);
  return () => (stopped = true);
}
export default { render };

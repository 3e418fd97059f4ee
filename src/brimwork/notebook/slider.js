// A range input with a name, and its value with a unit, for whoever does not see it. It shows the pictures of its steps in the figure beside it.
function render({ model, el }) {
  const input = document.createElement("input");
  const at = () => Math.round((input.valueAsNumber - input.min) / input.step);
  const told = () => input.setAttribute("aria-valuetext", `${input.value} ${model.get("unit")}`.trim());
  let said = model.get("said");
  const place = () => {
    if (model.get("said") < said) return model.set({ value: input.valueAsNumber, said }); // an answer to what was done before the last move
    said = model.get("said");
    input.value = model.get("value");
    told();
  };
  input.type = "range";
  const ends = () => {
    for (const part of ["min", "max", "step"]) input[part] = model.get(part);
    input.title = model.get("name");
    input.setAttribute("aria-label", model.get("name"));
  };
  ends();
  input.style.cssText = "width: 16em; max-width: calc(100% - 10px); margin: 5px; accent-color: var(--jp-brand-color1, #1976d2)"; // what shows that it has the focus stands round it, and its row cuts off more than that

  input.dataset.letter = model.get("letter");

  let kept = {}, beside = "";
  // A picture says for which steps of all sliders of its cell it was drawn; one that comes late, in whatever way, is not shown.
  const area = () => el.closest(".jp-OutputArea");
  const now = () =>
    [...area().querySelectorAll("input[data-letter]")].map((one) => `${one.dataset.letter}=${Math.round((one.valueAsNumber - one.min) / one.step)}`).join(" ");
  const show = (html) => {
    const figure = area()?.querySelector("figure");
    if (!figure) return false; // the kernel shows its picture by itself once all is at rest
    const fresh = document.createElement("template");
    fresh.innerHTML = html;
    const drawn = fresh.content.querySelector("figure");
    if (drawn.dataset.at !== now()) return false;
    area().latest = html;
    figure.dataset.at = drawn.dataset.at;
    figure.querySelector("svg, img").replaceWith(drawn.querySelector("svg, img"));
    // What is read out or folded open stays, with new words in it.
    for (const part of ["figcaption", "table"]) figure.querySelector(part).replaceChildren(...drawn.querySelector(part).childNodes);
    return true;
  };
  // The picture at rest comes as a new output, which nobody can refuse: a late one gives way again before it is painted.
  const replaced = new MutationObserver(() => {
    const at = area()?.querySelector("figure")?.dataset.at;
    if (at && at !== now() && area().latest) show(area().latest);
  });
  const watch = () => area() && replaced.observe(area(), { childList: true, subtree: true });
  model.on("msg:custom", (message) => {
    if (message.keep) {
      if (message.beside !== beside) [kept, beside] = [{}, message.beside];
      Object.assign(kept, message.keep);
      input.dataset.kept = Object.keys(kept).join(" "); // for whoever waits for them
    } else show(message.show);
  });
  input.addEventListener("input", () => {
    watch();
    const frame = kept[at()];
    model.set({ value: input.valueAsNumber, said: ++said, done: Date.now(), shown: frame && show(frame) ? beside : "" });
    model.save_changes();
    told();
  });
  const near = () => { if (Date.now() - told.near > 2000 || !told.near) { told.near = Date.now(); model.send({ near: true }); } }; // the kernel draws its track
  for (const event of ["pointerenter", "focus"]) input.addEventListener(event, near);
  model.on("change:value", place);
  for (const part of ["min", "max", "name"]) model.on(`change:${part}`, () => { ends(); place(); });
  place();
  input.dataset.lmSuppressShortcuts = "true"; // arrow keys are for the slider, not for JupyterLab
  el.append(input);
  return () => replaced.disconnect();
}
export default { render };

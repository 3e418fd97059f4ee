// A range input with a name, and its value with a unit, for whoever does not see it. It shows the pictures of its steps in the figure beside it.
function render({ model, el }) {
  const input = document.createElement("input");
  const at = () => Math.round((input.valueAsNumber - input.min) / input.step);
  const told = () => {
    input.value = model.get("value");
    input.setAttribute("aria-valuetext", `${input.value} ${model.get("unit")}`.trim());
  };
  input.type = "range";
  for (const part of ["min", "max", "step"]) input[part] = model.get(part);
  input.title = model.get("name");
  input.setAttribute("aria-label", model.get("name"));
  input.style.cssText = "width: 16em; accent-color: var(--jp-brand-color1, #1976d2)";

  let kept = {}, beside = "";
  const show = (html) => {
    const figure = el.closest(".jp-OutputArea")?.querySelector("figure");
    if (!figure) return; // the kernel shows its picture by itself once all is at rest
    const fresh = document.createElement("template");
    fresh.innerHTML = html;
    figure.querySelector("svg, img").replaceWith(fresh.content.querySelector("svg, img"));
    // What is read out or folded open stays, with new words in it.
    for (const part of ["figcaption", "table"]) figure.querySelector(part).replaceChildren(...fresh.content.querySelector(part).childNodes);
  };
  model.on("msg:custom", (message) => {
    if (message.keep) {
      if (message.beside !== beside) [kept, beside] = [{}, message.beside];
      Object.assign(kept, message.keep);
      input.dataset.kept = Object.keys(kept).join(" "); // for whoever waits for them
    } else if (message.at === null || message.at === at()) show(message.show);
  });
  input.addEventListener("input", () => {
    const frame = kept[at()];
    if (frame) show(frame);
    model.set({ value: input.valueAsNumber, shown: frame ? beside : "" });
    model.save_changes();
    told();
  });
  model.on("change:value", told);
  told();
  input.dataset.lmSuppressShortcuts = "true"; // arrow keys are for the slider, not for JupyterLab
  el.append(input);
}
export default { render };

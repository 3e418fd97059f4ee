// A range input with a name, and its value with a unit, for whoever does not see it.
function render({ model, el }) {
  const input = document.createElement("input");
  const show = () => {
    input.value = model.get("value");
    input.setAttribute("aria-valuetext", `${input.value} ${model.get("unit")}`.trim());
  };
  input.type = "range";
  for (const part of ["min", "max", "step"]) input[part] = model.get(part);
  input.title = model.get("name");
  input.setAttribute("aria-label", model.get("name"));
  input.style.cssText = "width: 16em; accent-color: var(--jp-brand-color1, #1976d2)";
  input.addEventListener("input", () => {
    const frame = model.get("frames")[Math.round((input.valueAsNumber - input.min) / input.step)];
    const figure = frame && el.closest(".jp-OutputArea")?.querySelector("figure");
    if (figure) figure.outerHTML = frame;
    model.set("value", input.valueAsNumber);
    model.save_changes();
    show();
  });
  model.on("change:value", show);
  show();
  input.dataset.lmSuppressShortcuts = "true"; // arrow keys are for the slider, not for JupyterLab
  el.append(input);
}
export default { render };

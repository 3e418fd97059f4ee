// A box with its label, as ipywidgets draws one.
function render({ model, el }) {
  const input = document.createElement("input"), label = document.createElement("label");
  el.classList.add("jupyter-widgets", "widget-inline-hbox", "widget-text");
  label.className = "widget-label";
  label.style.width = "initial";
  label.textContent = model.get("description");
  [input.type, input.id, input.placeholder] = ["text", `box-${Math.random().toString(36).slice(2)}`, model.get("placeholder")];
  label.htmlFor = input.id;
  input.dataset.lmSuppressShortcuts = "true"; // keys are for the box, not for JupyterLab

  let said = model.get("said"), stood = (input.value = model.get("value"));
  const show = () => {
    if (model.get("said") < said) return model.set({ value: stood, said }); // an answer to what was done before
    if (input.value !== stood) return; // somebody is typing
    const marked = document.activeElement === input && input.selectionEnd - input.selectionStart === input.value.length;
    said = model.get("said");
    stood = input.value = model.get("value");
    if (marked) input.select(); // to be typed over
  };
  model.on("change:value", show);
  input.addEventListener("blur", show);
  const entered = () => {
    const sound = input.value.toWellFormed?.() ?? input.value; // half a letter, which a paste can leave, is none that a message can hold
    if (sound !== input.value) input.value = sound;
    if (input.value === stood) return;
    stood = input.value;
    model.set({ value: stood, said: ++said, done: Date.now() });
    model.save_changes();
  };
  input.addEventListener("change", entered);
  input.addEventListener("keydown", (event) => { if (event.key === "Enter") entered(); }); // JupyterLab keeps Enter from making a change
  el.append(label, input);
}
export default { render };

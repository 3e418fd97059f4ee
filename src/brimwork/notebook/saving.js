// Saves the picture of the same cell as SVG, or as PNG as wide as a projector shows.
const WIDE = 1920;
function render({ el }) {
  const drawing = () => {
    const drawn = el.closest(".jp-OutputArea")?.querySelector("figure :is(svg[role=img], img)");
    if (!drawn) return "";
    if (drawn.tagName === "IMG") return new TextDecoder().decode(Uint8Array.from(atob(drawn.src.split(",")[1]), (one) => one.charCodeAt(0)));
    return new XMLSerializer().serializeToString(drawn);
  };
  const keep = (blob, ending) => {
    const link = document.createElement("a"), title = el.closest(".jp-OutputArea").querySelector("figcaption")?.textContent ?? "picture";
    link.href = URL.createObjectURL(blob);
    link.download = `${title.split(/[0-9,]/)[0].trim().toLowerCase().replace(/[^a-z]+/g, "-").replace(/^-|-$/g, "").slice(0, 40) || "picture"}.${ending}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };
  const asImage = (svg) => {
    const picture = new Image(), [, , wide, tall] = svg.match(/viewBox="(.*?)"/)[1].split(" ").map(Number);
    const sized = svg.replace(/<svg([^>]*?) (style|width)="[^>]*?viewBox/, `<svg$1 width="${WIDE}" height="${Math.round((WIDE * tall) / wide)}" viewBox`);
    picture.onload = () => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [WIDE, Math.round((WIDE * tall) / wide)];
      canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
      canvas.toBlob((blob) => keep(blob, "png"));
    };
    picture.src = URL.createObjectURL(new Blob([sized], { type: "image/svg+xml" }));
  };
  const offer = (name, tip, act) => {
    const button = document.createElement("button");
    [button.textContent, button.title, button.type] = [name, tip, "button"];
    button.className = "jupyter-button widget-button";
    button.style.cssText = "width: max-content; height: auto; margin: 2px 6px 2px 0";
    button.addEventListener("click", () => { const svg = drawing(); if (svg) act(svg); });
    el.append(button);
  };
  offer("Save as SVG", "save this picture as a drawing that stays sharp", (svg) => keep(new Blob([svg], { type: "image/svg+xml" }), "svg"));
  offer("Save as PNG", `save this picture ${WIDE} dots wide, for a slide`, asImage);
}
export default { render };

// Two buttons below each picture that has a caption: it is saved as SVG, or as PNG as wide as a projector shows. Whoever calls this first serves the whole page.
const WIDE = 1920;
const PICTURE = ":is(svg[role=img], .bw-paper > svg, img[src^='data:image/svg'])";

function saves() {
  if (document.body.dataset.saves) return;
  document.body.dataset.saves = "yes";
  const written = (drawn) => // one that a page has changed since says how it was
    drawn.asWritten ?? (drawn.tagName === "IMG" ? new TextDecoder().decode(Uint8Array.from(atob(drawn.src.split(",")[1]), (one) => one.charCodeAt(0))) : new XMLSerializer().serializeToString(drawn));
  const keep = (blob, svg, ending) => {
    const link = document.createElement("a"), title = new DOMParser().parseFromString(svg, "image/svg+xml").querySelector("title")?.textContent ?? "";
    link.href = URL.createObjectURL(blob);
    link.download = `${title.toLowerCase().replace(/[^a-z0-9]+/g, "-").replace(/^-|-$/g, "").slice(0, 60) || "picture"}.${ending}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };
  const asDrawing = (svg) => keep(new Blob([svg], { type: "image/svg+xml" }), svg, "svg");
  const asImage = (svg) => {
    const picture = new Image(), [, , wide, tall] = svg.match(/viewBox="(.*?)"/)[1].split(" ").map(Number);
    const sized = svg.replace(/<svg([^>]*?) (style|width)="[^>]*?viewBox/, `<svg$1 width="${WIDE}" height="${Math.round((WIDE * tall) / wide)}" viewBox`);
    picture.onload = () => {
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [WIDE, Math.round((WIDE * tall) / wide)];
      canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
      canvas.toBlob((blob) => keep(blob, svg, "png"));
    };
    picture.src = URL.createObjectURL(new Blob([sized], { type: "image/svg+xml" }));
  };
  const offer = (figure) => {
    const bar = document.createElement("p");
    bar.dataset.saving = "";
    bar.style.margin = "2px 0 6px";
    for (const [name, tip, act] of [["Save as SVG", "save this picture as a drawing that stays sharp", asDrawing], ["Save as PNG", `save this picture ${WIDE} dots wide, for a slide`, asImage]]) {
      const button = document.createElement("button");
      [button.textContent, button.title, button.type] = [name, tip, "button"];
      button.className = "jupyter-button widget-button";
      button.style.cssText = "width: max-content; height: auto; margin: 0 6px 0 0";
      button.addEventListener("click", () => act(written(figure.querySelector(PICTURE))));
      bar.append(button);
    }
    figure.append(bar);
  };
  const all = () => {
    for (const figure of document.querySelectorAll("figure:has(> figcaption):not(:has(> [data-saving]), .widget-html figure)")) if (figure.querySelector(PICTURE)) offer(figure);
  };
  new MutationObserver(all).observe(document.body, { childList: true, subtree: true });
  all();
}

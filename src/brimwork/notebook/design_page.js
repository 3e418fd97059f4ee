// The page of a design. The kernel says what is so, as data; this draws it. Every text is put in as words, never as markup; drawings are SVG of the kit's own writer.
const NARROW = 470; // px: a paper narrower than this gets drawings made for it
const LONG = 18; // characters: a longer value, or words to choose from, has a line of its own
const KEPT = ["change", "basis", "usual", "save"]; // wishes that are kept until they are answered, over a reload of the page too; asked twice they do the same
const CLICKED = 30, HELD = 3000; // ms after a button was let go in which its click comes; that it is held at most
const PATIENCE = 4000; // ms without an answer until that is said
const FROM = { yours: "my own answer", read: "read in print", memory: "from memory", "common practice": "common practice", judgement: "a judgement", measured: "measured on site" };
const GRADES = { fail: ["✕", "out"], marginal: ["◐", "near"], "not shown": ["?", "ask"], pass: ["✓", "in"], "does not apply": ["–", ""] };

function make(tag, given = {}, ...children) {
  const node = document.createElement(tag);
  for (const [name, value] of Object.entries(given)) {
    if (value === undefined || value === false || value === null) continue;
    if (name.startsWith("on")) node.addEventListener(name.slice(2), value);
    else if (name === "text") node.textContent = value;
    else if (name in node && !name.includes("-") && name !== "list" && name !== "role") node[name] = value;
    else node.setAttribute(name, value === true ? "" : value);
  }
  node.append(...children.flat().filter(child => child !== null && child !== undefined && child !== ""));
  return node;
}

function render({ model, el }) {
  const state = { open: new Set(["first", "also", "Site and people", "The feature"]), folds: new Set(), unfolded: new Set(), why: {}, hangs: {}, refused: new Map() };
  let waiting = 0, serial = 0, answered = 0, changed = 0, nth = -1, wanted = "", lit = "", url = "";
  const rows = new Map();
  const lost = () => document.body.dataset.lost === "true"; // the line to the server is broken; JupyterLab does not say
  const ask = (what, more = {}) => {
    const kept = KEPT.includes(what);
    if (lost() && !kept && what !== "ready") return tell({ words: "The connection is lost: only what is typed, and Save, wait here until it is back.", alert: true });
    model.send({ do: what, n: ++serial, ...more });
    if (kept) owe(serial, { do: what, ...more });
  };
  const button = (text, act, given = {}) => make("button", { type: "button", text, onclick: act, ...given });

  const parts = Object.fromEntries(["head", "said", "strip", "fails", "tabs", "paper", "form", "findings", "ways"].map(name => [name, make(name === "paper" ? "figure" : "div", { className: `bw-${name}` })]));
  saves();
  const said = parts.said;
  said.setAttribute("role", "status");
  said.setAttribute("aria-live", "polite");
  const draw = make("div", { className: "bw-draw" }, parts.tabs, parts.paper);
  const side = make("div", { className: "bw-side" }, parts.form, parts.findings);
  const top = make("div", { className: "bw-top" }, parts.head, parts.strip, make("div", { className: "bw-line" }, parts.fails, said));
  const main = make("div", { className: "bw-main" }, draw, side);
  const page = make("div", { className: "bw", "data-keeps": "true", role: "region", "aria-label": "Design page", "data-lm-suppress-shortcuts": "true" }, top, parts.ways, main);
  el.append(make("div", { className: "bw-outer" }, page));
  parts.form.setAttribute("aria-label", "Values of the design");
  parts.form.setAttribute("role", "form");
  parts.findings.setAttribute("aria-label", "Findings");
  parts.findings.setAttribute("role", "region");

  // --- the head, the numbers, what fails

  function drawHead({ title, kind, region, state: saved, undo, redo }) {
    const last = refusedLast()?.text || undo;
    const acts = make("div", { className: "bw-acts" },
      button("Undo", undone, { disabled: !last, title: last ? `take back: ${last}` : "nothing to take back" }),
      button("Redo", () => ask("redo"), { disabled: !redo, title: redo ? `make again: ${redo}` : "nothing to make again" }),
      button("Save", () => ask("save")),
      button("Print", () => ask("print"), { title: "write the pack to build from, as a PDF" }),
      button("My designs", () => ask("designs")));
    const kept = parts.head.contains(document.activeElement) ? document.activeElement.textContent : "";
    const link = state.printed ? make("a", { href: url, target: "_blank", rel: "noopener", download: false, className: "bw-link", text: `Open ${state.printed.name}` }) : null;
    const about = make("span", { className: "bw-say", text: `${kind}, ${region === "US" ? "US units" : "metric"} · ${saved}` });
    parts.head.replaceChildren(...[make("h2", { text: title }), about, link, acts].filter(Boolean));
    if (kept) [...acts.children].find(one => one.textContent === kept)?.focus();
  }

  function drawNumbers() {
    const { numbers, tally } = state;
    const boxes = numbers.map(({ value, words, was }) => make("div", { className: was ? "bw-number bw-moved" : "bw-number" },
      make("b", { text: value.replace(" ", "\u00a0") }), make("span", { title: words }, was ? [make("i", { text: `was ${was}` }), " · "] : null, words)));
    const rest = `${tally.fail || !tally.unanswered ? "" : "outside a limit; "}${tally.marginal} near a limit`;
    boxes.push(make("div", { className: "bw-number" }, make("b", { className: tally.fail ? "out" : tally.unanswered ? "" : "in", text: tally.fail ? `✕ ${tally.fail} outside` : tally.unanswered ? "none so far" : "✓ none outside" }), make("span", { text: rest })));
    parts.strip.replaceChildren(...boxes);
    const most = room.wide < NARROW + 90 ? 1 : 3, others = tally.names.slice(most), grave = others.filter(one => one.safety).length;
    const chips = tally.names.slice(0, most).map(({ id, title, safety }) => button(`✕ ${safety ? "Safety: " : ""}${title}`, () => toFinding(id), { className: safety ? "bw-chip bw-grave" : "bw-chip out" }));
    if (others.length) chips.push(button(`and ${others.length} more${grave ? `, ${grave} of safety` : ""}`, () => toFinding("out"), { className: "bw-chip bw-plain" }));
    if (tally.unanswered) chips.push(button(`? ${tally.unanswered} of safety not answered`, () => toFinding("ask"), { className: "bw-chip ask" }));
    parts.fails.replaceChildren(...chips);
  }

  function tell({ words, alert }) {
    state.said = { words, alert };
    said.className = alert ? "bw-said bw-alert" : "bw-said";
    said.setAttribute("role", alert ? "alert" : "status");
    said.replaceChildren(...(words ? [words] : []));
    said.title = words; // it has one line, so that nothing below moves; beside the box all of it stands
    if (alert && state.head?.saved && /kept|saved/.test(words)) said.append(" ");
  }

  // --- the boxes

  function box(entry) {
    const id = `bw-${entry.key}-${Math.random().toString(36).slice(2, 8)}`;
    const note = make("span", { className: "bw-note", id: `${id}n` });
    const input = entry.options.length ? make("select", { id }) : make("input", { id, type: "text", autocomplete: "off", spellcheck: false, enterKeyHint: "done" });
    input.setAttribute("aria-describedby", `${id}n`);
    const rests = entry.basis !== undefined && !["title", "note", "region"].includes(entry.key)
      ? make("select", { "aria-label": `${entry.label}: where from?` }, (state.bases ?? []).map(one => make("option", { value: one, text: FROM[one] ?? one }))) : null;
    const back = button("", () => ask("usual", { key: entry.key }), { className: "bw-plain bw-back" });
    const row = make("div", { className: "bw-row" }, make("label", { htmlFor: id, text: entry.label }), input,
      make("span", { className: "bw-under" }, note, back, rests ? make("span", { className: "bw-basis" }, make("span", { text: "where from? ", "aria-hidden": "true" }), rests) : null));
    const held = { row, input, note, rests, back, entry };
    input.addEventListener("change", () => send(held));
    input.addEventListener("focus", () => light(entry.key));
    input.addEventListener("keydown", event => {
      if (event.key === "Enter" && input.tagName === "INPUT") send(held);
      if (event.key === "Escape") leave(entry.key);
      event.stopPropagation();
    });
    rests?.addEventListener("change", () => ask("basis", { key: entry.key, basis: rests.value }));
    rests?.addEventListener("focus", () => light(entry.key));
    input.addEventListener("input", () => { if (lost()) keep(); });
    fill(held, entry, true);
    if (state.refused.has(entry.key)) refuse(held);
    rows.set(entry.key, [...(rows.get(entry.key) ?? []).filter(one => one.row.isConnected), held]);
    return row;
  }

  // Whoever has gone on typing since the box was last shown or sent keeps what stands there, whatever is answered meanwhile.
  const writing = ({ input, shown }) => input === document.activeElement && input.tagName === "INPUT" && input.value !== shown;
  const put = (held, text) => { held.input.value = text; held.shown = held.input.value; };

  const sound = text => text.toWellFormed?.() ?? text; // half a letter, which a paste can leave, is none that a file or a message can hold

  function send(held) {
    held.input.value = held.input.tagName === "INPUT" ? sound(held.input.value) : held.input.value;
    held.shown = held.input.value;
    if (held.input.value === held.entry.value && !held.row.classList.contains("bw-bad")) return;
    held.entry = { ...held.entry, value: held.input.value };
    ask("change", { key: held.entry.key, text: held.input.value });
  }

  // What was refused stays in its box as it was typed, over every drawing of the form and over a reload, until it is typed anew or Escape takes it back.
  function refuse(held) {
    const { text, words, offer } = state.refused.get(held.entry.key);
    if (!writing(held)) put(held, text);
    held.entry = { ...held.entry, value: text };
    say(held, words, true);
    held.note.setAttribute("role", "alert");
    if (offer) held.note.append(" ", button(`Take ${offer}`, () => { held.input.value = offer; send(held); held.input.focus(); }));
  }

  function leave(key) {
    state.refused.delete(key);
    keep();
    for (const held of rows.get(key) ?? []) fill(held, entryOf(key) ?? held.entry, true);
    drawHead(state.head);
  }

  // What was refused after the last change is taken back before it, the last first: the kernel never had it.
  const refusedLast = () => [...state.refused.values()].filter(one => one.after >= (state.head?.last ?? 0)).at(-1);

  function undone() {
    state.undoing = !lost() && [...owed.values()].some(wish => wish.do === "change"); // what has just been typed is answered first
    if (state.undoing) return;
    const refused = refusedLast();
    if (!refused) return ask("undo");
    leave(refused.key);
    tell({ words: `Taken back: ${refused.text}.`, alert: false });
  }

  const within = name => /^[A-Z]{2}/.test(name) ? name : name.slice(0, 1).toLowerCase() + name.slice(1);
  const untaken = () => state.refused.size ? `Not taken, and not in it: ${[...state.refused.keys()].map(key => within(nameOf(key))).join(", ")}.` : "";

  // --- what nobody has answered yet

  const owed = new Map(); // serial -> wish
  const owedTo = () => `brimwork, not answered: ${state.head.file}`;
  const drafts = () => [...rows.values()].flat().filter(one => one.row.isConnected && one.input.value !== one.entry.value && !one.row.classList.contains("bw-bad"))
    .map(({ entry, input }) => ({ do: "change", key: entry.key, text: input.value }));

  function keep() {
    const refused = [...state.refused].map(([key, { text }]) => ({ do: "change", key, text, refused: true }));
    const all = [...refused, ...owed.values(), ...(lost() ? drafts() : [])];
    try {
      if (state.head && all.length) sessionStorage.setItem(owedTo(), JSON.stringify(all));
      else if (state.head) sessionStorage.removeItem(owedTo());
    } catch { /* a browser that keeps nothing: what is typed stays in its box */ }
  }

  function owe(n, wish) {
    owed.set(n, wish);
    keep();
    setTimeout(() => owed.has(n) && sayOwed(wish), lost() ? 0 : PATIENCE);
  }

  function sayOwed({ key }) {
    if (!key) return tell({ words: lost() ? "The connection is lost: Save is sent again when it is back." : "No answer to Save yet; it is sent again if the page has to be loaded again.", alert: true });
    for (const held of rows.get(key) ?? []) say(held, lost() ? "Kept in this page; it counts when the connection is back." : "No answer yet; it is kept in this page.", false);
  }

  // After a reload: what was typed or saved and never answered is sent again, to the design that it was meant for.
  function sendAgain() {
    let kept = null;
    try { kept = JSON.parse(sessionStorage.getItem(owedTo())); } catch { /* nothing kept */ }
    kept = kept?.filter(one => state.refused.get(one.key)?.text !== one.text || one.do !== "change");
    if (!kept?.length || owed.size) return;
    const all = [...kept.filter(one => one.do !== "save"), ...kept.filter(one => one.do === "save").slice(-1)], wishes = all.filter(one => !one.refused);
    for (const { do: what, refused, ...more } of all) ask(what, more);
    if (!wishes.length) return;
    state.again = `The connection was lost, and is back. Sent again: ${[...new Set(wishes.map(one => one.do === "save" ? "Save" : `${nameOf(one.key)}${one.text ? ` ${one.text}` : ""}`))].join("; ")}.`;
    state.until = serial;
  }

  function fill(held, entry, anew = false) {
    held.entry = entry;
    const { input, note, rests, back, row } = held;
    row.querySelector("label").textContent = entry.label;
    if (entry.options.length) {
      const now = entry.options.map(([value]) => value).join();
      if (input.dataset.options !== now + entry.options.map(one => one[1]).join()) {
        input.dataset.options = now + entry.options.map(one => one[1]).join();
        input.replaceChildren(...entry.options.map(([value, text]) => make("option", { value, text })));
      }
    } else input.placeholder = entry.hint;
    if (anew || !writing(held)) put(held, entry.value);
    const longest = Math.max(entry.value.length, ...entry.options.map(one => one[1].length));
    row.className = `bw-row bw-${entry.state}${longest > LONG ? " bw-long" : ""}${entry.wants ? " bw-bad" : ""}${held.asked ? " bw-asked" : ""}`;
    input.setAttribute("aria-invalid", String(Boolean(entry.wants)));
    note.removeAttribute("role");
    row.hidden = Boolean(entry.idle); // it plays no part as the design stands
    back.hidden = !entry.usual;
    back.textContent = entry.usual ? `take the usual ${entry.usual}` : "";
    back.setAttribute("aria-label", `${entry.label}: take the usual ${entry.usual}`);
    note.textContent = entry.wants ? `${entry.wants[0].toUpperCase()}${entry.wants.slice(1)}.` : entry.state === "usual" ? `usual, ${entry.basis}; not yours yet` : entry.state === "yours" && entry.basis && entry.basis !== "yours" ? entry.basis : "";
    if (rests) { rests.value = entry.basis || "yours"; rests.parentElement.hidden = entry.state === "empty"; }
    reach(held);
  }

  // Where a number is from is asked after it was typed, or at every box when that is wanted; until then the Tab key goes from box to box.
  function reach(held) {
    const there = held.asked || state.froms ? 0 : -1;
    held.back.tabIndex = there;
    if (held.rests) held.rests.tabIndex = there;
  }

  function askFrom(key) {
    for (const held of [...rows.values()].flat()) {
      held.asked = held.entry.key === key;
      held.row.classList.toggle("bw-asked", held.asked);
      reach(held);
    }
  }

  function say(held, words, bad) {
    bad ||= Boolean(held.entry.wants);
    words = held.entry.wants ? "" : words;
    held.row.classList.toggle("bw-bad", bad);
    held.input.setAttribute("aria-invalid", String(bad));
    held.told = Boolean(words) && !bad; // what was said of an earlier change goes with the next; what is wrong stays said
    if (words) held.note.textContent = words;
    else fill(held, held.entry);
  }

  function drawForm() {
    rows.clear();
    const steps = state.form.map(step => {
      const cautions = step.cautions.length ? make("details", { className: "bw-cautions", open: false }, make("summary", { text: `Take care: ${step.cautions[0].words.split(/[:;,.]/)[0]}${step.cautions.length > 1 ? `, and ${step.cautions.length - 1} more` : ""}` }),
        step.cautions.map(one => make("p", {}, one.words, " ", make("small", { text: `(${one.basis})` })))) : null;
      const body = make("div", { className: "bw-boxes" });
      const put = () => {
        const more = step.more.length ? make("details", { className: "bw-more" }, make("summary", { text: `Seldom changed: ${step.more.length} more` })) : null;
        more?.addEventListener("toggle", () => { if (more.open && more.children.length === 1) more.append(...step.more.map(box)); });
        const acts = step.name === "Cost" ? make("p", { className: "bw-acts" },
          button("Write a price list to fill", () => ask("prices out")), button("Read my prices", () => ask("prices in"))) : null;
        const about = step.about ? make("p", { className: "bw-say", text: step.about }) : null;
        body.replaceChildren(...[about, cautions, ...step.entries.map(box), more, acts].filter(Boolean));
      };
      if (!state.full) { put(); return make("section", {}, make("h3", { text: step.title }), body); }
      const fold = make("details", { className: "bw-step", "data-name": step.name, open: state.open.has(step.name) }, make("summary", { text: titleOf(step) }), body);
      if (fold.open) put();
      fold.addEventListener("toggle", () => { state.open[fold.open ? "add" : "delete"](step.name); if (fold.open && !body.children.length) put(); });
      fold.bwPut = put;
      return fold;
    });
    const froms = button("Where each number is from", () => {
      state.froms = !state.froms;
      froms.setAttribute("aria-pressed", String(state.froms));
      parts.form.classList.toggle("bw-froms", state.froms);
      for (const held of [...rows.values()].flat()) reach(held);
    }, { "aria-pressed": String(Boolean(state.froms)), title: "show at every box, and reach by the Tab key, where its number is from" });
    const depth = button(state.full ? "Show only what is asked first" : "Show all values", () => ask("depth", { full: !state.full }));
    parts.form.replaceChildren(make("p", { className: "bw-depth" }, progress(), make("span", { className: "bw-acts" }, froms, depth)), ...steps);
  }

  const titleOf = step => step.entries.length ? `${step.title} (${step.entries.filter(one => one.value).length} of ${step.entries.length} known)` : step.title;

  function progress() {
    const { answered: some, asked } = state.answered ?? {};
    return make("span", { className: "bw-say bw-progress", text: asked ? (some < asked ? `${some} of ${asked} first questions answered. ` : "All first questions are answered. ") : "" });
  }

  function toBox(key) {
    const held = (rows.get(key) ?? []).find(one => one.row.isConnected);
    if (held) {
      for (let fold = held.row.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
      held.row.scrollIntoView({ block: "center", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
      held.input.focus({ preventScroll: true });
      held.input.select?.();
      light(key);
      return;
    }
    const step = state.form.find(one => [...one.entries, ...one.more].some(entry => entry.key === key));
    if (step && state.full) {
      const fold = [...parts.form.querySelectorAll(".bw-step")].find(one => one.dataset.name === step.name);
      fold.open = true;
      state.open.add(step.name);
      if (!fold.querySelector(".bw-boxes").children.length) fold.bwPut();
      const more = fold.querySelector(".bw-more");
      if (more && step.more.some(entry => entry.key === key)) { more.open = true; if (more.children.length === 1) more.append(...step.more.map(box)); }
      if (rows.has(key)) toBox(key);
    } else if (!state.full) { wanted = key; ask("depth", { full: true }); }
  }

  // --- the drawing

  // On a page as wide as a phone the drawing stays over the boxes while one is typed in, moved to the place that the box is about.
  const typing = event => {
    const now = event.type === "focusin" ? event.target.matches(".bw-row :is(input, select)") && page.clientWidth <= 560 : parts.form.contains(event.relatedTarget) && page.classList.contains("bw-typing");
    if (now === page.classList.contains("bw-typing")) return now && bring(event.relatedTarget ?? event.target);
    const box = event.target, before = box.getBoundingClientRect().top;
    page.classList.toggle("bw-typing", now);
    scrollBy({ top: box.getBoundingClientRect().top - before, behavior: "instant" });
    if (now) bring(box);
  };
  function bring(box) {
    const row = box.closest?.(".bw-row"), under = draw.getBoundingClientRect().bottom, at = row?.getBoundingClientRect();
    if (at && at.top < under) scrollBy({ top: at.top - under - 8, behavior: "instant" });
    const place = parts.paper.querySelector(".bw-lit"), svg = parts.paper.querySelector("svg");
    if (!svg) return;
    const [paper, seen] = [parts.paper.getBoundingClientRect(), (place ?? svg).getBoundingClientRect()];
    parts.paper.scrollTop += place ? (seen.top + seen.bottom) / 2 - (paper.top + paper.bottom) / 2 : 0;
    parts.paper.scrollLeft += place ? (seen.left + seen.right) / 2 - (paper.left + paper.right) / 2 : 0;
  }
  parts.form.addEventListener("focusin", typing);
  parts.form.addEventListener("focusout", typing);
  // By keyboard a view that is seen in part is not moved by the browser; under a finger or pointer none may move.
  parts.tabs.addEventListener("focusin", ({ target }) => target.matches(":focus-visible") && target.scrollIntoView({ block: "nearest", inline: "nearest" }));

  function light(key) {
    lit = key;
    parts.paper.querySelectorAll(".bw-lit").forEach(one => one.classList.remove("bw-lit"));
    if (key) parts.paper.querySelectorAll(`[data-key="${CSS.escape(key)}"]`).forEach(one => one.classList.add("bw-lit"));
    parts.form.querySelectorAll(".bw-on").forEach(one => one.classList.remove("bw-on"));
    (rows.get(key) ?? []).forEach(one => one.row.classList.add("bw-on"));
  }

  function drawTabs() {
    const chosen = state.view?.name;
    parts.tabs.setAttribute("role", "group");
    parts.tabs.setAttribute("aria-label", "What is shown");
    const kept = parts.tabs.contains(document.activeElement) ? document.activeElement.dataset.name : "";
    parts.tabs.replaceChildren(...state.views.map(({ name, title }) => button(title, () => ask("view", { name, narrow: narrow() }), { "aria-pressed": String(name === chosen), "data-name": name })));
    if (kept) [...parts.tabs.children].find(one => one.dataset.name === kept)?.focus();
  }

  function drawView() {
    const view = state.view;
    if (view.tables) return drawTables(view);
    if (!view.svg) {
      const needs = (view.needs ?? []).map(({ key, name }) => make("li", {}, button(name, () => toBox(key), { className: "bw-plain" })));
      parts.paper.className = "bw-paper bw-wait";
      parts.paper.replaceChildren(make("p", { text: needs.length ? "The drawing appears when these are known:" : `Not drawn: ${view.why}.` }), make("ul", {}, needs));
      return;
    }
    const at = parts.paper.contains(document.activeElement) ? document.activeElement.dataset.key : "";
    const fresh = new DOMParser().parseFromString(view.svg, "image/svg+xml").documentElement;
    fresh.setAttribute("role", "group");
    fresh.style.maxHeight = `max(min(58vh, 620px), ${3.5 * fresh.viewBox.baseVal.height}px)`; // letters stay large enough to be read
    if (room.narrow && fresh.viewBox.baseVal.width > 130) fresh.style.minWidth = `${2.9 * fresh.viewBox.baseVal.width}px`; // a chart that has no narrow form is moved sideways
    fresh.querySelector("title")?.remove();
    const seen = new Map();
    fresh.querySelectorAll("[data-key]").forEach(one => {
      const words = one.querySelector("text");
      const before = seen.get(one.dataset.key);
      if (!before || (words && !before.querySelector("text"))) seen.set(one.dataset.key, one);
    });
    let first = true;
    for (const [key, one] of seen) {
      one.setAttribute("role", "button");
      one.setAttribute("tabindex", first ? "0" : "-1");
      one.setAttribute("aria-label", `${nameOf(key)}: change`);
      first = false;
    }
    fresh.asWritten = view.svg;
    parts.paper.className = "bw-paper";
    const table = view.table?.rows.length ? make("details", { className: "bw-numbers", open: state.unfolded.has(view.name) }, make("summary", { text: "Its numbers" }), tableOf(view.table.head, view.table.rows)) : null;
    table?.addEventListener("toggle", () => state.unfolded[table.open ? "add" : "delete"](view.name));
    parts.paper.replaceChildren(...[fresh, make("figcaption", { className: "bw-say", text: `${view.caption} ${first ? "" : "Touch a size, a level or a body to change it; by keyboard, arrows and Enter."}` }), table].filter(Boolean));
    if (at) parts.paper.querySelector(`[role=button][data-key="${CSS.escape(at)}"]`)?.focus();
    light(lit);
  }

  const entryOf = key => state.form?.flatMap(step => [...step.entries, ...step.more]).find(one => one.key === key);
  const nameOf = key => rows.get(key)?.[0]?.entry.label ?? entryOf(key)?.label ?? key.split(".")[1].replaceAll("_", " ");

  parts.paper.addEventListener("click", event => {
    const key = event.target.closest?.("[data-key]")?.dataset.key;
    if (key) toBox(key);
  });
  parts.paper.addEventListener("keydown", event => {
    const one = event.target.closest?.("[role=button][data-key]");
    if (!one) return;
    const all = [...parts.paper.querySelectorAll("[role=button][data-key]")], at = all.indexOf(one);
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (step) {
      const next = all[(at + step + all.length) % all.length];
      all.forEach(each => each.setAttribute("tabindex", each === next ? "0" : "-1"));
      next.focus();
    } else if (event.key === "Enter" || event.key === " ") toBox(one.dataset.key);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  parts.paper.addEventListener("focusin", event => { const key = event.target.closest?.("[data-key]")?.dataset.key; if (key) light(key); });

  const tableOf = (head, body) => make("div", { className: "bw-scroll", tabIndex: 0, role: "region", "aria-label": "Table" }, make("table", {},
    make("thead", {}, make("tr", {}, head.map(cell => make("th", { scope: "col", text: cell })))),
    make("tbody", {}, body.map(([first, ...rest]) => make("tr", {}, make("th", { scope: "row", text: first }), rest.map((cell, at) => make("td", { "data-head": head[at + 1] }, linked(cell))))))));
  // Words, and where they wait for values the way to their boxes.
  function linked(said) {
    if (typeof said === "string") return said;
    const { words, needs } = said, named = needs.filter(({ name }) => words.includes(`“${name}”`));
    if (!needs.length) return words;
    if (named.length) return words.split(/“(.*?)”/).map((part, at) => { const way = at % 2 && named.find(({ name }) => name === part); return way ? button(part, () => toBox(way.key), { className: "bw-plain" }) : at % 2 ? `“${part}”` : part; });
    const ways = needs.slice(0, 4).flatMap(({ key, name }) => [" ", button(name, () => toBox(key), { className: "bw-plain" })]);
    const more = needs.length > 4 ? ` and ${needs.length - 4} more` : "";
    return /^needs /i.test(words) ? ["needs ", ...ways, more] : [words, /[.:]$/.test(words) ? " " : ": ", ...ways, more];
  }

  function drawTables(view) {
    parts.paper.className = "bw-paper bw-lists";
    const made = view.tables.map(({ caption, head, rows: body, note }) => make("section", {}, caption ? make("h3", { text: caption }) : null, note ? make("p", {}, linked(note)) : null, body.length ? tableOf(head, body) : null));
    if (view.name === "compare") {
      const choose = make("select", { "aria-label": "The other design", onchange: () => { state.beside = choose.value; if (choose.value) ask("beside", { path: choose.value }); } },
        make("option", { value: "", text: "Choose the other design" }), [...(state.own ?? []), ...state.examples.map(name => ({ path: `designs/${name}.toml`, words: `an example: ${name.replaceAll("-", " ")}` }))].map(({ path, words }) => make("option", { value: path, text: words })));
      if (state.beside) choose.value = state.beside;
      parts.paper.replaceChildren(choose, ...made.filter((_, i) => view.tables[i].rows.length));
    } else parts.paper.replaceChildren(...made);
  }

  // --- findings

  function drawFindings() {
    const all = state.findings, words = state.tally.words;
    const kept = document.activeElement?.closest?.(".bw-finding")?.dataset.id;
    const group = (title, found, open, name) => {
      if (!found.length) return null;
      const list = () => make("ul", { className: "bw-list" }, found.map(findingOf));
      if (open) return make("section", { "data-group": name }, make("h3", { text: title }), list());
      const fold = make("details", { "data-group": name, open: state.folds.has(name) }, make("summary", { text: `${title} (${found.length})` }));
      if (fold.open) fold.append(list());
      fold.addEventListener("toggle", () => { state.folds[fold.open ? "add" : "delete"](name); if (fold.open && fold.children.length === 1) fold.append(list()); });
      return fold;
    };
    const of = grade => all.filter(one => one.grade === grade);
    const asks = of("not shown").filter(one => one.safety);
    const people = ["First of all", ...new Set(asks.map(one => one.who).filter(who => who !== "First of all").sort((a, b) => b.startsWith("You,") - a.startsWith("You,")))];
    const asked = asks.length ? make("section", { "data-group": "ask" }, make("h3", { text: "Not answered yet, and somebody's safety rests on it" }),
      people.map(who => [who, asks.filter(one => one.who === who)]).filter(([, found]) => found.length).flatMap(([who, found]) => [make("h4", { text: who }), make("ul", { className: "bw-list" }, found.map(one => findingOf(one)))])) : null;
    parts.findings.replaceChildren(...[
      group("Outside a limit, or near it", [...of("fail"), ...of("marginal")], true, "out"),
      asked,
      group(words["not shown"], of("not shown").filter(one => !one.safety), false, "unknown"),
      group(words.pass, of("pass"), false, "pass"),
      group(words["does not apply"], of("does not apply"), false, "none"),
      make("p", { className: "bw-say", text: "Nothing here is approval: local codes and licensed practice come first." }),
    ].filter(Boolean));
    if (kept) parts.findings.querySelector(`.bw-finding[data-id="${CSS.escape(kept)}"] button`)?.focus();
  }

  function findingOf(one) {
    const [sign, colour] = GRADES[one.grade];
    const opened = state.why.hasOwnProperty(one.id), item = make("li", { className: "bw-finding", "data-id": one.id });
    const act = one.grade === "not shown"
      ? button("answer", () => toBox(one.needs[0].key), { "aria-label": `answer: ${one.title}` })
      : button(opened ? "less" : "why", () => { if (opened) { delete state.why[one.id]; delete state.hangs[one.id]; drawFindings(); } else { state.why[one.id] = null; drawFindings(); ask("why", { id: one.id }); } }, { "aria-expanded": String(opened), "aria-label": `why: ${one.title}` });
    const needs = one.grade === "not shown" ? make("small", {}, linked({ words: "needs ", needs: one.needs })) : null;
    const text = make("div", {}, make("span", { text: one.title }), one.value ? make("small", { text: `${one.value}${one.limit ? `; limit: ${one.limit}` : ""}${one.note ? `; ${one.note}` : ""}` }) : null, needs,
      one.remedy.words ? make("small", {}, "To change: ", linked(one.remedy), ".") : null);
    item.append(make("span", { className: `bw-sign ${colour}`, text: sign, title: state.tally.words[one.grade] }), text, act);
    if (opened) item.append(why(one));
    return item;
  }

  function why(one) {
    const on = state.hangs[one.id], worked = state.why[one.id];
    const hangs = on === undefined ? make("p", { className: "bw-say", text: "Looking which values it hangs on ..." })
      : on.length ? make("ul", { className: "bw-hangs" }, on.map(({ key, name, words }) => make("li", {}, button(name, () => toBox(key), { className: "bw-plain" }), `: ${words}`)))
      : make("p", { className: "bw-say", text: "It hangs on an answer, or on values given twice: no number alone moves it." });
    return make("div", { className: "bw-why" }, make("strong", { text: "It hangs on" }), hangs,
      worked?.lines.length ? make("pre", { text: worked.lines.join("\n") }) : null, make("small", { text: `Limit taken from: ${one.basis}.` }));
  }

  function toFinding(id) {
    const group = id === "ask" || id === "out" ? parts.findings.querySelector(`[data-group="${id}"]`) : parts.findings.querySelector(`.bw-finding[data-id="${CSS.escape(id)}"]`);
    group?.scrollIntoView({ block: "start", behavior: matchMedia("(prefers-reduced-motion: reduce)").matches ? "auto" : "smooth" });
    group?.querySelector("button")?.focus({ preventScroll: true });
  }

  // --- the ways in

  function drawWays() {
    const ways = state.start;
    parts.ways.hidden = !ways;
    main.hidden = Boolean(ways) || !state.form;
    parts.strip.hidden = parts.fails.hidden = main.hidden;
    parts.head.hidden = !state.form;
    if (!ways) return parts.ways.replaceChildren();
    const region = state.region ?? state.head?.region ?? ways.region ?? (navigator.language.endsWith("-US") ? "US" : "UK");
    state.region = region;
    const units = make("fieldset", { className: "bw-units" }, make("legend", { text: "Which units do you work in?" }),
      [["UK", "Metric (UK words)"], ["US", "Feet, inches, gallons (US words)"]].map(([value, text]) => make("label", {},
        make("input", { type: "radio", name: "bw-region", value, checked: value === region, onchange: () => { state.region = value; } }), ` ${text}`)));
    const kinds = make("div", { className: "bw-kinds" }, ways.kinds.map(({ kind, name, words }) => button("", () => ask("start", { kind, region: state.region }), { "aria-label": `Begin: ${name}`, className: "bw-kind" })).map((one, at) => {
      one.append(make("b", { text: ways.kinds[at].name }), make("span", { text: ways.kinds[at].words }));
      return one;
    }));
    const own = ways.designs.length ? make("section", {}, make("h3", { text: "Go on with one of yours" }), make("ul", { className: "bw-own" }, ways.designs.map(({ path, words, when }) => make("li", {}, button(words, () => ask("open", { path }), { className: "bw-plain" }), make("small", { text: ` ${path}, ${when}` }))))) : null;
    const examples = ways.examples.length ? make("section", {}, make("h3", { text: "Or look at an example" }), make("p", { className: "bw-say", text: "Invented designs; some of their checks fail on purpose. Nothing of them gets into a design of yours; one that you change and save is a copy, and says so." }),
      make("p", { className: "bw-acts" }, ways.examples.map(({ name, words }) => button(words, () => ask("example", { name }))))) : null;
    const back = ways.open ? button("Back to the open design", () => { state.start = null; drawWays(); }) : null;
    const name = make("input", { type: "text", size: 28, "aria-label": "Another name for the open design", placeholder: "another name, such as front-path" });
    const saves = ways.open ? make("section", {}, make("h3", { text: "The open design" }), make("p", { className: "bw-acts" }, name, button("Save under that name", () => name.value.trim() && ask("save", { name: name.value })),
      state.head?.saved ? button("Leave the unsaved changes", () => { state.refused.clear(); ask("leave"); }) : null),
      make("p", { className: "bw-acts" }, make("span", { className: "bw-say", text: "Take what stands here over to another kind: " }), ways.kinds.filter(({ kind }) => kind !== state.head?.kind).map(({ kind, name: title }) => button(title, () => { state.start = null; ask("turn", { kind }); })))) : null;
    parts.ways.replaceChildren(...[back, make("h2", { text: "Begin with your own" }), units, kinds, own, examples, saves].filter(Boolean));
  }

  function drawChoices() {
    if (!state.choices?.length) return;
    const chosen = {};
    const rowsOf = state.choices.map(({ key, name, mine, theirs }) => make("fieldset", {}, make("legend", { text: name }),
      [[true, `yours: ${mine}`], [false, `in the file: ${theirs}`]].map(([value, text]) => make("label", {}, make("input", { type: "radio", name: `bw-${key}`, onchange: () => { chosen[key] = value; } }), ` ${text}`))));
    said.append(make("div", { className: "bw-choices" }, rowsOf, button("Save so", () => ask("choose", { keep: chosen }))));
  }

  // --- what the kernel says

  // The findings come after the answer that they belong to; one that was there before is a number, its place in the list before.
  function list({ nth: now, found }, n) {
    if (n < changed) return; // those of a later change are on their way
    if (now && now !== nth + 1) return ask("findings");
    state.findings = found.map(one => typeof one === "number" ? state.findings[one] : one);
    nth = now;
    for (const id of Object.keys(state.why)) ask("why", { id });
    clearTimeout(waiting);
    requestAnimationFrame(() => { waiting = setTimeout(drawFindings); }); // what came before them is painted first
  }

  // Sizes are read before anything is put in: read in between, each would have all of the page laid out once more.
  let room = {};
  function arrived(message, buffers) {
    if (message.findings) return list(message.findings, message.n);
    const stored = [...owed].some(([n, wish]) => n <= message.n && wish.do === "save");
    if (message.n !== undefined) {
      for (const n of owed.keys()) if (n <= message.n) owed.delete(n);
      keep();
      if (message.n < answered) return; // a later answer has been shown already
      answered = message.n;
    }
    if (message.tally) changed = message.n ?? changed;
    const held = document.activeElement?.closest?.(".bw-row"), stood = held?.getBoundingClientRect().top;
    room = { wide: page.clientWidth, narrow: narrow() };
    for (const name of ["head", "numbers", "tally", "view", "views", "form", "full", "bases", "examples", "own", "answered", "start", "choices"]) if (name in message) state[name] = message[name];
    if (message.head && message.head.file !== state.file) { if (state.file && !stored) state.refused.clear(); state.file = message.head.file; } // another design has boxes of its own
    for (const { key } of message.entries ?? []) state.refused.delete(key);
    if (message.head && message.head.kind !== state.kind) { for (const key of [...state.refused.keys()]) if (!entryOf(key)) state.refused.delete(key); state.kind = message.head.kind; } // another kind has no place for it
    if (message.printed) {
      if (url) URL.revokeObjectURL(url);
      url = URL.createObjectURL(new Blob([buffers[0]], { type: "application/pdf" }));
      state.printed = message.printed;
    }
    if (message.view) { drawTabs(); drawView(); }
    if (message.head || message.printed) drawHead(state.head);
    if (message.numbers) drawNumbers();
    if (message.form) { state.why = {}; state.hangs = {}; drawForm(); }
    if (message.form && message.start === null) { side.scrollTop = draw.scrollTop = 0; if (page.getBoundingClientRect().top < 0) page.scrollIntoView({ block: "start" }); }
    if (message.entries) for (const entry of message.entries) {
      for (const held of rows.get(entry.key) ?? []) fill(held, entry);
      for (const step of state.form) for (const list of [step.entries, step.more]) list.forEach((one, at) => { if (one.key === entry.key) list[at] = entry; });
    }
    if (message.entries && state.full) for (const fold of parts.form.querySelectorAll(".bw-step")) {
      const step = state.form.find(one => one.name === fold.dataset.name), head = fold.querySelector("summary");
      if (head.textContent !== titleOf(step)) head.textContent = titleOf(step);
    }
    if (message.answered) parts.form.querySelector(".bw-progress")?.replaceWith(progress());
    if (message.why) { state.why[message.why.id] = message.why; drawFindings(); }
    if (message.hangs) { state.hangs[message.hangs.id] = message.hangs.on; if (message.hangs.id in state.why) drawFindings(); }
    if ("start" in message) drawWays();
    if (message.said) tell(message.said);
    if (message.did) for (const held of [...rows.values()].flat()) if (held.told && held.entry.key !== message.did.key) say(held, "", false);
    if (message.did?.key) { for (const held of rows.get(message.did.key) ?? []) say(held, message.did.words, false); askFrom(message.did.key); }
    if (message.refused) {
      const { key, text, words } = message.refused, there = (rows.get(key) ?? []).filter(one => one.row.isConnected);
      if (text !== undefined && entryOf(key)) { state.refused.delete(key); state.refused.set(key, { ...message.refused, after: state.head?.last ?? 0 }); }
      if (text !== undefined && there.length) there.forEach(refuse);
      else tell({ words, alert: true });
      if (state.head) drawHead(state.head);
    }
    if ((stored || message.printed) && state.refused.size) tell({ words: `${state.said?.words ?? ""} ${untaken()}`.trim(), alert: true });
    if (held?.isConnected) { // what is typed in stays where it is, whatever is said above it
      const moved = held.getBoundingClientRect().top - stood;
      if (moved) (side.scrollHeight > side.clientHeight && getComputedStyle(side).overflowY !== "visible" ? side : document.scrollingElement).scrollTop += moved;
    }
    if (message.form && message.head) sendAgain();
    keep(); // what was refused is kept too
    if (state.again && message.n >= state.until) { tell({ words: message.refused ? `${state.again} ${message.refused.words}` : state.again, alert: Boolean(message.refused) }); state.again = ""; }
    drawChoices();
    if (wanted && message.form) { const key = wanted; wanted = ""; requestAnimationFrame(() => toBox(key)); }
    if (state.undoing) undone();
    page.dataset.answered = answered; // for whoever waits for it
    if (message.did) page.dataset.painted = performance.now();
  }

  page.addEventListener("keydown", event => { // in a box the keys take back what was typed there
    if (event.key.toLowerCase() !== "z" || !(event.ctrlKey || event.metaKey) || event.target.matches("input[type=text]")) return;
    if (event.shiftKey) ask("redo"); else undone();
    event.preventDefault();
    event.stopPropagation();
  });

  const narrow = () => { // of the room that the paper will have: beside the boxes, or alone on a narrow page
    const wide = page.clientWidth;
    return wide > 0 && (parts.paper.clientWidth || (wide > 880 ? wide * 0.58 : wide > 560 ? wide / 2 : wide)) < NARROW;
  };
  let was = null;
  const sized = new ResizeObserver(() => {
    if (was === null || narrow() === was || !state.view) return;
    was = narrow();
    ask("view", { name: state.view.name, narrow: was });
  });
  sized.observe(page);
  const headed = new ResizeObserver(() => page.style.setProperty("--bw-head", `${parts.head.offsetHeight}px`)); // on a narrow page it scrolls away, the numbers stay
  headed.observe(parts.head);
  const topped = new ResizeObserver(() => page.style.setProperty("--bw-top", `${top.offsetHeight - parts.head.offsetHeight}px`));
  topped.observe(top);
  // An answer puts buttons in place of buttons. While one is pressed it waits: what goes down on one button and up on another is no click.
  const late = [];
  let pressed = 0;
  const come = (message, buffers) => pressed ? late.push([message, buffers]) : arrived(message, buffers);
  const letGo = () => { clearTimeout(pressed); pressed = 0; late.splice(0).forEach(one => arrived(...one)); };
  const lifted = () => { if (pressed) { clearTimeout(pressed); pressed = setTimeout(letGo, CLICKED); } };
  page.addEventListener("pointerdown", event => { if (event.target.closest("button, summary, a")) { clearTimeout(pressed); pressed = setTimeout(letGo, HELD); } }, true);
  for (const end of ["pointerup", "pointercancel"]) addEventListener(end, lifted, true);
  model.on("msg:custom", come);
  addEventListener("pagehide", keep);
  requestAnimationFrame(() => { was = narrow(); ask("ready", { narrow: was }); });
  return () => { sized.disconnect(); headed.disconnect(); topped.disconnect(); removeEventListener("pagehide", keep); for (const end of ["pointerup", "pointercancel"]) removeEventListener(end, lifted, true); clearTimeout(pressed); model.off("msg:custom", come); if (url) URL.revokeObjectURL(url); };
}
export default { render };

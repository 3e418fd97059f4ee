// A page without code: the outputs of a workbook's cells and its live boxes, fed by the server; nothing in here, and nothing that this page may send, is code for the kernel.
import * as base from "@jupyter-widgets/base";
import { ManagerBase } from "@jupyter-widgets/base-manager";
import * as controls from "@jupyter-widgets/controls";
import { Widget } from "@lumino/widgets";
import "@jupyter-widgets/controls/css/widgets-base.css";
import "@jupyter-widgets/controls/css/lumino.css";
import "@jupyter-widgets/controls/css/labvariables.css";

const { room, home } = document.body.dataset;
const PATIENCE = 1000; // ms between two tries to reach the server again
const bytes = (text) => new DataView(Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0)).buffer); // as JupyterLab hands them to a widget
const letters = (buffer) => {
  const view = buffer.buffer ? new Uint8Array(buffer.buffer, buffer.byteOffset, buffer.byteLength) : new Uint8Array(buffer);
  return btoa(Array.from(view, (byte) => String.fromCharCode(byte)).join(""));
};

// --- the line to the server: what was not answered when it broke is sent again, and what was missed is asked for -------------------------------
const waiting = new Map(); // messages to the kernel that it has not done with, by their id, oldest first
const asked = new Map(); // id of such a message -> [what to call when it is done, the cell it came from]
let line, seen = 0, made = 0, ended = false, unheard = sessionStorage.getItem("lost") === "yes"; // whether something was typed that the server before never heard
sessionStorage.removeItem("lost");

function connect() {
  line = new WebSocket(`${location.origin.replace(/^http/, "ws")}${home}line/${room}?seen=${seen}`);
  line.onopen = () => {
    lost(false);
    if (unheard) tell("The server was started again. The last change did not reach it any more: make it once more.");
    unheard = false;
    for (const message of waiting.values()) line.send(message);
  };
  line.onmessage = ({ data }) => {
    const message = JSON.parse(data);
    if (message.n) seen = message.n;
    taken = taken.then(() => take(message)).catch(console.error);
  };
  line.onclose = ({ code }) => {
    if (ended) return;
    if (code === 4404) return again(); // the server knows this page no longer
    if (code === 4409) return; // another line has taken its place
    document.body.dataset.lost = "true";
    setTimeout(connect, PATIENCE);
    if (code !== 1001) setTimeout(() => line.readyState === WebSocket.OPEN || lost(true), 1.2 * PATIENCE);
  };
}

// Whether there is a line. A page that keeps what is typed meanwhile goes on; in any other nothing can be typed, since it would be gone with the server.
const keeps = () => document.querySelector("[data-keeps]") !== null;
function lost(yes) {
  if (!yes) delete document.body.dataset.lost;
  document.querySelector("main").inert = yes && !keeps();
  tell(yes ? `The connection to Brimwork is lost. It is tried again every second. ${keeps() ? "What you type now waits in this page, and is sent when it is back." : "Nothing can be typed here until it is back; what was answered is kept."}` : "");
}

function send(type, content, buffers, done, cell) {
  const id = `${room}-${++made}`;
  const message = JSON.stringify({ id, type, content, buffers: (buffers ?? []).map(letters) });
  waiting.set(id, message);
  asked.set(id, [done, cell]);
  if (line.readyState === WebSocket.OPEN) line.send(message);
  return id;
}

// Leaving is told before the next page asks for anything, so that a page that is loaded again finds its place free.
const leave = () => line.readyState === WebSocket.OPEN && line.send('{"leaving":true}');
addEventListener("beforeunload", leave);
addEventListener("pagehide", leave);
addEventListener("pageshow", ({ persisted }) => persisted && location.reload());

function again() {
  ended = true;
  const before = Number(sessionStorage.getItem("again") ?? 0);
  if (Date.now() - before < 20_000) return tell("This page has stopped. What you changed is kept.", true);
  sessionStorage.setItem("again", Date.now());
  document.body.dataset.lost = "true";
  if (waiting.size && !keeps()) sessionStorage.setItem("lost", "yes");
  location.reload();
}

function tell(words, button) {
  const bar = document.querySelector("#told");
  bar.hidden = !words;
  bar.replaceChildren(words);
  if (!button) return;
  const press = document.createElement("button");
  press.textContent = "Bring it back";
  press.onclick = () => location.reload();
  bar.append(" ", press);
}

// --- widgets ---------------------------------------------------------------------------------------------------------------------------------
class Comm {
  constructor(id, target) {
    [this.comm_id, this.target_name] = [id, target];
    comms.set(id, this);
  }
  send(data, callbacks, metadata, buffers) {
    return send("comm_msg", { comm_id: this.comm_id, data }, buffers, callbacks?.iopub?.status, callbacks?.cell);
  }
  close(data) {
    comms.delete(this.comm_id);
    return send("comm_close", { comm_id: this.comm_id, data: data ?? {} });
  }
  open() {
    throw new Error("a page opens nothing in the kernel");
  }
  on_msg(callback) {
    this.message = callback;
  }
  on_close(callback) {
    this.closed = callback;
  }
}
const comms = new Map();

class Manager extends ManagerBase {
  async loadClass(name, module) {
    const found = { "@jupyter-widgets/base": base, "@jupyter-widgets/controls": controls }[module] ?? (await foreign(module));
    if (!found?.[name]) throw new Error(`${module} has no ${name}`);
    return found[name];
  }
  callbacks(view) {
    return { ...super.callbacks(view), cell: view?.el?.closest?.("[data-cell]")?.dataset.cell };
  }
  _create_comm() {
    return Promise.reject(new Error("a page makes no widgets"));
  }
  async _get_comm_info() {
    return {};
  }
}

// The script that carries anywidgets is the one of the Python package that is installed, in the form in which it asks for what it needs by name.
const scripts = {};
function foreign(module) {
  return (scripts[module] ??= new Promise((found, lost) => {
    if (module !== "anywidget") return lost(new Error(`this page knows no ${module}`));
    window.define = (needs, make) => found(make(base));
    const script = document.createElement("script");
    [script.src, script.type, script.onerror] = [`${home}static/anywidget.js`, "module", lost];
    document.head.append(script);
  }));
}
const manager = new Manager();

// --- what the kernel tells -------------------------------------------------------------------------------------------------------------------
let taken = Promise.resolve(); // one after the other, in the order in which they came
const shown = new Map(); // display id -> the elements that show it

async function take({ type, content, metadata, parent, buffers, n }) {
  if (type === "done") {
    const [done] = asked.get(parent) ?? [];
    waiting.delete(parent);
    asked.delete(parent);
    done?.({ content: { execution_state: "idle" }, parent_header: { msg_id: parent } });
  } else if (type === "comm_open") {
    await manager.handle_comm_open(new Comm(content.comm_id, content.target_name), { content, metadata, buffers: buffers.map(bytes) });
  } else if (type === "comm_msg") {
    comms.get(content.comm_id)?.message?.({ content, metadata, parent_header: { msg_id: parent }, buffers: buffers.map(bytes) });
  } else if (type === "comm_close") {
    const comm = comms.get(content.comm_id);
    comms.delete(content.comm_id);
    comm?.closed?.({ content, metadata });
  } else if (type === "output") {
    await output(areaOf(parent), content);
  } else if (type === "clear") {
    areaOf(parent)?.replaceChildren();
  } else if (type === "ran") {
    document.querySelector(`[data-cell="${content.cell}"]`)?.removeAttribute("aria-busy");
    if (content.last) document.body.dataset.alive = "true";
  } else if (type === "gone") again();
}

function areaOf(parent) {
  const cell = parent.startsWith("cell-") ? parent.slice(5) : asked.get(parent)?.[1];
  return document.querySelector(`[data-cell="${cell}"]`);
}

async function output(area, { kind, body, display, update }) {
  const places = update ? (shown.get(display) ?? []) : [document.createElement("div")];
  for (const place of places) {
    place.className = `jp-OutputArea-child jp-OutputArea-output shown-${kind}`;
    if (kind === "widget") {
      const view = await manager.create_view(await manager.get_model(body));
      place.replaceChildren();
      if (!place.isConnected) area?.append(place);
      Widget.attach(view.luminoWidget, place);
    } else {
      if (kind === "html") {
        place.innerHTML = body;
        typeset(place);
      } else place.replaceChildren(Object.assign(document.createElement("pre"), { textContent: body }));
      if (!place.isConnected) area?.append(place);
    }
  }
  if (display && !update) shown.set(display, [...(shown.get(display) ?? []), ...places]);
}

// --- mathematics, and light or dark ------------------------------------------------------------------------------------------------------------
// The script for formulas is loaded when the first formula appears.
const FORMULA = /\$[^$]+\$|\\\(|\\\[/;
async function typeset(element) {
  if (!FORMULA.test(element.textContent)) return;
  document.head.append(Object.assign(document.createElement("link"), { rel: "stylesheet", href: `${home}static/math.css` }));
  const { typeset: set } = await import(`${home}static/math.js`);
  (typeset = set)(element);
}
typeset(document.querySelector("main"));
// What a widget asks to have set; boxes and labels stay as they are typed.
window.MathJax = { Hub: { Queue: ([, , element]) => element.closest(".widget-htmlmath") && typeset(element) } };

const dark = matchMedia("(prefers-color-scheme: dark)");
const colour = () => (document.body.dataset.jpThemeLight = String(!dark.matches));
dark.addEventListener("change", colour);
colour();
history.replaceState(null, "", `${location.pathname}?was=${room}${location.hash}`);
connect();

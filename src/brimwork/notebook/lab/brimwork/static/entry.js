// In JupyterLab a workbook of ours comes to life when it is opened, if its code is as it was shipped; anybody else's waits until somebody runs it.
// After a run the page stands at its top, and a kernel that was restarted says so, with one button. Written as the container that JupyterLab loads; nothing is built.
(() => {
  const RUN = "notebook:run-all-cells", BACK = "brimwork:bring-back";
  const attended = new WeakSet();
  let app;

  const isWorkbook = (panel) => !!panel?.sessionContext && Array.isArray(panel.content?.widgets);
  const code = (panel) => panel.content.widgets.filter((cell) => cell.model.type === "code").map((cell) => cell.model.sharedModel.getSource().trim());

  async function ours(panel) {
    const bytes = new TextEncoder().encode(JSON.stringify(code(panel)).replace(/[\u007f-\uffff]/g, (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, "0")}`));
    const digest = Array.from(new Uint8Array(await crypto.subtle.digest("SHA-256", bytes)), (byte) => byte.toString(16).padStart(2, "0")).join("");
    const { baseUrl } = app.serviceManager.serverSettings;
    const answer = await fetch(`${baseUrl}brimwork/own/${digest}`);
    return answer.ok && (await answer.json()).ours;
  }

  // A kernel that has run something may hold what somebody did since: it is left alone.
  async function fresh(panel) {
    const kernel = panel.sessionContext.session?.kernel;
    if (!kernel) return false;
    await kernel.info;
    const { content } = await kernel.requestExecute({ code: "", silent: true, store_history: false }).done;
    return (content.execution_count ?? 0) === 0;
  }

  function top(panel) {
    panel.content.activeCellIndex = 0;
    for (const scrolled of [panel.content.node, ...panel.content.node.querySelectorAll(".jp-WindowedPanel-outer")]) scrolled.scrollTop = 0;
  }

  async function attend(panel) {
    if (!isWorkbook(panel) || attended.has(panel)) return;
    attended.add(panel);
    await panel.context.ready;
    await panel.sessionContext.ready;
    const own = await ours(panel);
    if (own) panel.sessionContext.statusChanged.connect((_, status) => /^(auto)?restarting$|^dead$/.test(status) && restarted(panel, status));
    if (own && (await fresh(panel)) && app.shell.currentWidget === panel) {
      panel.node.dataset.brimwork = "running";
      await app.commands.execute(RUN);
    }
    panel.node.dataset.brimwork = own ? "ours" : "theirs";
  }

  let told = 0;
  function restarted(panel) {
    if (Date.now() - told < 3000) return; // one restart is told in several steps
    told = Date.now();
    app.commands.execute("apputils:notify", {
      message: "What works things out behind this page was started anew. What you saved, and what you changed in a design, is kept.",
      type: "warning",
      options: { autoClose: false, actions: [{ label: "Bring the page to life again", commandId: BACK, displayType: "accent" }] },
    });
  }

  const plugin = {
    id: "brimwork:workbooks",
    autoStart: true,
    activate: (lab) => {
      app = lab;
      app.commands.addCommand(BACK, { label: "Bring the workbook to life again", execute: () => app.commands.execute(RUN) });
      app.commands.commandExecuted.connect((_, { id, result }) => {
        const panel = app.shell.currentWidget;
        if (id === RUN && isWorkbook(panel)) Promise.resolve(result).then(() => top(panel), () => undefined);
      });
      app.shell.currentChanged?.connect((_, { newValue }) => attend(newValue).catch(console.warn));
      app.restored.then(() => attend(app.shell.currentWidget)).catch(console.warn);
    },
  };
  (window._JUPYTERLAB ??= {}).brimwork = { init: () => undefined, get: async () => () => ({ __esModule: true, default: plugin }) };
})();

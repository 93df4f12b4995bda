// A front end with widgets of version 8, as small as it can be: runs cells on a kernel of the notebook server that
// serves this page, and shows the widgets that they open. The tests drive it over WebDriver.

import { KernelManager, ServerConnection } from "@jupyterlab/services";
import { HTMLManager } from "@jupyter-widgets/html-manager/lib/htmlmanager";
import { shims } from "@jupyter-widgets/base";
import "@jupyter-widgets/controls/css/labvariables.css";
import "@lumino/widgets/style/index.css";

const VIEW = "application/vnd.jupyter.widget-view+json";

/** Knows the widgets of one kernel. */
class Manager extends HTMLManager {
  constructor(kernel) {
    super();
    this.kernel = kernel;
    kernel.registerCommTarget(this.comm_target_name, (comm, message) =>
      this.handle_comm_open(new shims.services.Comm(comm), message));
  }

  async _create_comm(target, id, data, metadata, buffers) {
    const comm = this.kernel.createComm(target, id);
    if (data || metadata) comm.open(data, metadata, buffers);
    return new shims.services.Comm(comm);
  }

  async _get_comm_info() {
    const reply = await this.kernel.requestCommInfo({ target_name: this.comm_target_name });
    return reply.content.comms;
  }

  /** Takes the widgets that the kernel has, as after the page was loaded anew. */
  restore() {
    return this._loadFromKernel();
  }
}

const address = location.origin;
const kernels = new KernelManager({
  serverSettings: ServerConnection.makeSettings({ baseUrl: address, wsUrl: address.replace("http", "ws") }),
});
let kernel;
let manager;

const shown = async id => {
  const place = document.body.appendChild(document.createElement("div"));
  await manager.display_view(manager.create_view(await manager.get_model(id)), place);
};

window.frontEnd = {
  errors: [],

  async start(name) {
    kernel = await kernels.startNew({ name });
    manager = new Manager(kernel);
    return kernel.id;
  },

  /** Runs a cell and shows its widget; returns the identity of that, or empty. */
  async run(code) {
    const views = [];
    const cell = kernel.requestExecute({ code });
    cell.onIOPub = message => {
      const view = message.content.data?.[VIEW];
      if (view) views.push(view.model_id);
      if (message.header.msg_type === "error") this.errors.push(message.content.evalue);
    };
    await cell.done;
    for (const id of views) await shown(id);
    return views[0] ?? "";
  },

  /** Goes on with a kernel that runs, and shows a widget that it has. */
  async comeBack(kernelId, widgetId) {
    kernel = kernels.connectTo({ model: { id: kernelId, name: "headrace" } });
    manager = new Manager(kernel);
    await manager.restore();
    await shown(widgetId);
  },

  /** Returns what a front end keeps of the widgets in a notebook. */
  saved() {
    return manager.get_state();
  },

  end() {
    return kernel.shutdown();
  },
};

for (const kind of ["error", "unhandledrejection"]) {
  window.addEventListener(kind, event => window.frontEnd.errors.push(String(event.reason ?? event.message)));
}

(() => {
  for (const piece of document.querySelectorAll(".headrace-whatif:not(.moves)")) {
    piece.classList.add("moves");
    const controls = [...piece.querySelectorAll("input, select")];
    const frames = new Map([...piece.querySelectorAll("[data-at]")].map(frame => [frame.dataset.at, frame]));
    const image = piece.querySelector("img");
    const said = piece.querySelector(".said");
    const position = control =>
      control.type === "checkbox" ? +control.checked : control.tagName === "SELECT" ? control.selectedIndex : +control.value;
    const picture = async packed => {
      const bytes = Uint8Array.from(atob(packed), letter => letter.charCodeAt(0));
      const opened = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
      return "data:image/svg+xml," + encodeURIComponent(await new Response(opened).text());
    };
    let latest = 0;
    const show = async () => {
      const own = ++latest;
      for (const control of controls) {
        if (control.dataset.labels) control.nextElementSibling.textContent = control.dataset.labels.split("|")[+control.value];
      }
      const frame = frames.get(controls.map(position).join(" "));
      const source = frame.dataset.picture && image ? await picture(frame.dataset.picture) : "";
      if (own !== latest) return;
      said.textContent = frame.textContent;
      if (image) {
        image.hidden = !source;
        image.alt = frame.dataset.alt;
        if (source) image.src = source;
      }
    };
    for (const control of controls) control.addEventListener("input", show);
  }
})();

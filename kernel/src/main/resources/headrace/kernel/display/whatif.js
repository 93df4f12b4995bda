(() => {
  const element = (name, properties = {}, ...children) => {
    const made = Object.assign(document.createElement(name), properties);
    made.append(...children);
    return made;
  };
  const position = control =>
    control.type === "checkbox" ? +control.checked : control.tagName === "SELECT" ? control.selectedIndex : +control.value;
  const put = (control, at) => {
    if (control.type === "checkbox") control.checked = at === 1;
    else if (control.tagName === "SELECT") control.selectedIndex = at;
    else control.value = at;
  };
  const opened = async packed => {
    const bytes = Uint8Array.from(atob(packed), letter => letter.charCodeAt(0));
    const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
    return (await new Response(stream).text()).split("\n");
  };
  const text = (lines, ranges) => ranges.split(" ").flatMap(range => {
    const [from, to = from] = range.split("-").map(Number);
    return lines.slice(from, to + 1);
  }).join("\n");
  const picture = (lines, part) => {
    if (part.dataset.bitmap) return "data:image/png;base64," + text(lines, part.dataset.bitmap);
    return part.dataset.picture ? "data:image/svg+xml," + encodeURIComponent(text(lines, part.dataset.picture)) : "";
  };

  for (const piece of document.querySelectorAll(".headrace-whatif:not(.moves)")) {
    piece.classList.add("moves");
    const controls = [...piece.querySelectorAll(".controls input, .controls select")];
    const frames = new Map([...piece.querySelectorAll(":scope > [data-at]")].map(frame => [frame.dataset.at, frame]));
    const packed = piece.querySelector("[data-lines]").dataset.lines;
    let lines;
    const drawn = piece.querySelector(".drawn");
    const tabs = element("div", { className: "tabs" });
    tabs.setAttribute("role", "tablist");
    drawn.before(tabs);
    let chosen;

    // parts in their places; those that stand already are kept, so that nothing flickers
    const arrange = (as, names) => {
      const before = [...drawn.children].map(part => part.dataset.name).join("|");
      if (drawn.dataset.as === as && before === names.join("|")) return;
      drawn.dataset.as = as;
      drawn.replaceChildren(...names.map(name => {
        const part = element("section", { className: "part" },
          element("figure", {}, element("img")), element("pre", { className: "said" }));
        part.dataset.name = name;
        if (name) part.prepend(element("p", { className: "name", textContent: name }));
        return part;
      }));
      label();
    };
    const label = () => {
      const names = drawn.dataset.as === "tabs" ? [...drawn.children].map(part => part.dataset.name) : [];
      tabs.replaceChildren(...names.map(name => {
        const tab = element("button", { type: "button", textContent: name, onclick: () => choose(name) });
        tab.setAttribute("role", "tab");
        return tab;
      }));
      if (names.length) choose(names.includes(chosen) ? chosen : names[0]);
    };
    const choose = name => {
      chosen = name;
      for (const tab of tabs.children) tab.setAttribute("aria-selected", String(tab.textContent === name));
      for (const part of drawn.children) part.hidden = part.dataset.name !== name;
    };

    let latest = 0;
    const show = async () => {
      const own = ++latest;
      for (const control of controls) {
        if (control.dataset.labels) control.nextElementSibling.textContent = control.dataset.labels.split("|")[+control.value];
      }
      const frame = frames.get(controls.map(position).join(" "));
      const parts = [...frame.children];
      lines ??= await opened(packed);
      if (own !== latest) return;
      arrange(frame.dataset.as, parts.map(part => part.dataset.name));
      [...drawn.children].forEach((place, i) => {
        place.querySelector(".said").textContent = text(lines, parts[i].dataset.said);
        const source = picture(lines, parts[i]);
        if (source && !place.querySelector("img")) place.querySelector(".said").before(element("figure", {}, element("img")));
        const image = place.querySelector("img");
        if (!image) return;
        image.hidden = !source;
        image.alt = text(lines, parts[i].dataset.alt);
        if (source) image.src = source;
      });
    };

    for (const part of drawn.children) part.dataset.name = part.querySelector(".name")?.textContent ?? "";
    label();
    for (const control of controls) control.addEventListener("input", show);
    for (const button of piece.querySelectorAll(".presets button")) {
      button.addEventListener("click", () => {
        button.dataset.at.split(" ").forEach((at, i) => {
          if (at !== "-") put(controls[i], +at);
        });
        show();
      });
    }
  }
})();

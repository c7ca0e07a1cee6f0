"use strict";
// One step at a time: shows and hides what is on the page and adds places to type. It is printed as ever.
(() => {
  const page = document.documentElement;
  const all = (what, from = document) => [...from.querySelectorAll(what)];
  const first = (what, from = document) => from.querySelector(what);
  const kit = document.getElementById("tablet").content;
  const copy = (what) => first(what, kit).cloneNode(true);
  const words = first(".words", kit).dataset;

  // Another number, revision or checksum starts empty.
  const name = "tailtrue/" + document.body.dataset.sheet;
  const none = () => ({ boxes: {}, written: {}, released: {}, place: 0 });
  let kept = none();
  let keeps = true;
  try {
    const found = JSON.parse(localStorage.getItem(name));
    for (const part in kept) if (found && typeof found[part] === typeof kept[part]) kept[part] = found[part] ?? kept[part];
  } catch (wrong) {
    keeps = wrong instanceof SyntaxError;
  }
  const keep = () => {
    try {
      localStorage.setItem(name, JSON.stringify(kept));
    } catch {
      keeps = false;
    }
    tellKeeping();
  };

  const [start, where, turn, ask] = [".start", ".where", ".turn", "dialog"].map(copy);
  first("header").after(start);
  document.body.prepend(where);
  first("main").after(turn);
  document.body.append(ask);
  const place = first(".place", where);
  const focus = () => place.focus({ preventScroll: true });
  const said = first(".answer", turn);
  const [back, next] = all("button", turn);
  const tellKeeping = () => { [first(".keeping", start).hidden, first(".not-keeping", start).hidden] = [!keeps, keeps]; };

  const paged = () => page.classList.contains("paged");
  const boxes = all("main .tick input");
  const setBoxes = () => boxes.forEach((box) => { box.checked = kept.boxes[box.ariaLabel] === true; });
  for (const box of boxes) {
    box.onchange = () => {
      kept.boxes[box.ariaLabel] = box.checked;
      keep();
      if (paged()) tellLeft();
    };
    // A pedal must not take back a tick just made by finger.
    box.parentNode.onclick = (event) => {
      if (event.detail && paged()) setTimeout(focus);
    };
  }

  // What is shown, in order: what holds for all of the work, then each phase, its cautions first; all steps for one piece
  // before the next.
  const about = (id) => document.getElementById(id)?.closest("section");
  const stops = [...all("main .pair"), about("job-cautions")];
  const table = [about("look-up")];
  const screens = [];
  const leaves = new Set([...all("main > *"), first(".identity")]);
  const add = (units, more = {}) => {
    units = units.filter(Boolean);
    if (units.length) screens.push({ units: new Set(units), ...more });
  };
  add([first(".identity"), about("findings"), about("who-may"), ...stops], { title: words.before });
  add([about("needs"), about("cut-list"), about("time"), about("conventions")]);
  for (const phase of all("main > .phase")) {
    leaves.delete(phase);
    const own = (what) => all(what, phase).filter((one) => !one.closest(".step"));
    const [head, purpose, messages, steps] = [own("h2"), own(".purpose"), own(".message"), all(".step", phase)];
    [...head, ...purpose, ...messages, ...steps].forEach((one) => leaves.add(one));
    if (messages.length) add([...head, ...purpose, ...messages], { phase });
    const dangers = messages.filter((one) => one.classList.contains("danger"));
    const turns = Math.max(...steps.map((step) => all(".boxes .tick", step).length));
    for (let turnNo = 0; turnNo < turns; turnNo++) {
      steps.forEach((step, at) => add(
        [...head, ...(at || messages.length ? [] : purpose), ...dangers, step],
        { phase, step, turnNo, ticks: all(".boxes .tick", step), hold: first(".hold", step) },
      ));
    }
  }
  add(table);
  add([about("trouble"), about("care")]);
  const tickOf = (screen) => screen.ticks[screen.turnNo] ?? screen.ticks[0];
  const pieceOf = (screen) => (screen.ticks.length > 1 ? first(".label", tickOf(screen)).textContent.trim() : "");
  const numberOf = (screen) => first("h3 .no", screen.step).textContent;
  const keyOf = (screen) => numberOf(screen) + "/" + pieceOf(screen);

  // A comma is a decimal point; whatever else is not a number says so and is not judged.
  const number = (text) => {
    const plain = text.trim().replace("\u2212", "-").replace(",", ".");
    return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : NaN;
  };
  const judge = (input, verdict, check) => {
    const value = number(input.value);
    const { low, high } = check.dataset;
    verdict.textContent =
      !input.value.trim() ? ""
      : Number.isNaN(value) ? words.noNumber
      : !low && !high ? ""
      : (!low || value >= number(low)) && (!high || value <= number(high)) ? words.inside : words.outside;
  };
  let now = 0;
  const places = new Map();
  for (const step of all("main .step")) {
    const made = [];
    for (const check of all(".check", step)) {
      for (const entry of all(".entry", check)) {
        const [line, input] = [first(".line", entry), document.createElement("input")];
        input.autocomplete = "off";
        input.className = "tool";
        input.ariaLabel = `${first(".says", check).textContent} ${line.ariaLabel} ${made.length + 1}`;
        line.after(input);
        let verdict = null;
        if (entry.dataset.number !== undefined) {
          input.inputMode = "decimal";
          verdict = document.createElement("output");
          verdict.className = "tool";
          entry.append(" ", verdict);
        }
        const at = "/" + made.length;
        const judged = () => verdict && judge(input, verdict, check);
        made.push({ input, judged, at });
        input.oninput = () => {
          kept.written[keyOf(screens[now]) + at] = input.value;
          judged();
          keep();
        };
      }
    }
    for (const hold of all(".hold", step)) hold.append(copy(".release"));
    places.set(step, made);
  }

  // A hold is passed by a name and a press on its own button, and by nothing else.
  const held = (screen) => Boolean(screen.hold) && !kept.released[keyOf(screen)];
  const showHold = (screen) => {
    const by = kept.released[keyOf(screen)];
    const [input, [release, takeBack]] = [first("input", screen.hold), all("button", screen.hold)];
    input.value = by?.name ?? "";
    input.readOnly = release.hidden = Boolean(by);
    takeBack.hidden = !by;
    first(".released", screen.hold).textContent = by ? `${words.released} ${by.name}, ${by.at}` : "";
  };
  const wait = (why) => {
    said.textContent = why;
    first("input", screens[now].hold).focus();
  };
  const release = () => {
    const by = first("input", screens[now].hold).value.trim();
    if (!by) return wait(words.noName);
    kept.released[keyOf(screens[now])] = { name: by, at: new Date().toLocaleString() };
    show(now);
    next.focus();
  };
  const takeBack = () => {
    delete kept.released[keyOf(screens[now])];
    show(now);
  };

  first("[data-do=table]", where).hidden = !table[0];
  const tellLeft = () => {
    const before = screens.slice(0, now).filter((one) => one.step && !first("input", tickOf(one)).checked);
    first(".left", where).textContent = before.length ? `${words.left} ${before.length}` : "";
  };
  const shown = { stops: false, table: false };
  const draw = () => {
    const screen = screens[now];
    const extra = [...(shown.stops ? stops : []), ...(shown.table ? table : [])];
    leaves.forEach((one) => one.classList.toggle("away", !screen.units.has(one) && !extra.includes(one)));
    all("main > .phase").forEach((one) => one.classList.toggle("away", one !== screen.phase));
    for (const what in shown) first(`[data-do=${what}]`, where).ariaPressed = shown[what];
  };
  const show = (to) => {
    const stop = screens.findIndex(held);
    now = Math.max(0, Math.min(to, screens.length - 1, stop < 0 ? Infinity : stop));
    kept.place = now;
    keep();
    const screen = screens[now];
    shown.stops = shown.table = false;
    draw();
    const [no, title] = first("h2", screen.phase ?? [...screen.units][0])?.childNodes ?? [];
    first(".of-phase", where).textContent = screen.title ?? no.textContent + (title?.data ?? "");
    first(".of-step", where).textContent = screen.step ? [words.step + " " + numberOf(screen), pieceOf(screen)].filter(Boolean).join(", ") : "";
    const steps = screens.filter((one) => one.step);
    first(".count", where).textContent = screen.step ? `(${steps.indexOf(screen) + 1} ${words.of} ${steps.length})` : "";
    const bar = first("progress", where);
    bar.max = screens.length;
    bar.value = now + 1;
    tellLeft();
    said.textContent = keeps ? "" : words.notKept;
    if (screen.step) {
      screen.ticks.forEach((tick) => tick.classList.toggle("away", tick !== tickOf(screen)));
      all("[data-piece]", screen.step).forEach((one) => one.classList.toggle("away", one.dataset.piece !== pieceOf(screen)));
      for (const { input, judged, at } of places.get(screen.step)) {
        input.value = kept.written[keyOf(screen) + at] ?? "";
        judged();
      }
      if (screen.hold) showHold(screen);
    }
    back.disabled = now === 0;
    next.disabled = now === screens.length - 1;
    next.ariaDisabled = held(screen) || next.disabled;
    scrollTo(0, 0);
    focus();
  };
  const forward = () => (held(screens[now]) ? wait(words.hold) : show(now + 1));

  // The screen stays on while steps are shown.
  let lock = null;
  const awake = async () => {
    if (!paged() || document.hidden || !navigator.wakeLock) return;
    try {
      lock = await navigator.wakeLock.request("screen");
    } catch {
      lock = null;
    }
  };
  document.addEventListener("visibilitychange", awake);

  // Links lead to parts that are not shown: they rest while steps are shown, except on paper.
  const links = (rest) => all("main a").forEach((link) => {
    const [from, to] = rest ? ["href", "data-to"] : ["data-to", "href"];
    if (!link.hasAttribute(from)) return;
    link.setAttribute(to, link.getAttribute(from));
    link.removeAttribute(from);
  });
  addEventListener("beforeprint", () => links(false));
  addEventListener("afterprint", () => links(paged()));

  const begin = () => {
    page.classList.add("paged");
    links(true);
    show(kept.place);
    awake();
  };
  const leave = () => {
    const at = screens[now].step ?? screens[now].phase;
    page.classList.remove("paged");
    links(false);
    lock?.release();
    first("button", start).focus({ preventScroll: true });
    at?.scrollIntoView();
  };
  const clear = () => {
    kept = none();
    keep();
    setBoxes();
    ask.close();
    if (paged()) show(0);
  };
  const toggle = (what, parts) => {
    shown[what] = !shown[what];
    draw();
    if (shown[what]) parts[0]?.scrollIntoView();
  };
  const acts = {
    begin, leave, clear, release,
    next: forward,
    back: () => show(now - 1),
    ask: () => ask.showModal(),
    stay: () => ask.close(),
    stops: () => toggle("stops", stops),
    table: () => toggle("table", table),
    "take-back": takeBack,
  };
  document.addEventListener("click", (event) => {
    const button = event.target.closest("button[data-do]");
    if (button) acts[button.dataset.do]();
  });

  // A key shows the rest of a long step before it turns; held down it turns nothing.
  const ahead = [" ", "Enter", "PageDown", "ArrowRight", "ArrowDown"];
  const behind = ["PageUp", "ArrowLeft", "ArrowUp"];
  document.addEventListener("keydown", (event) => {
    if (!paged() || ask.open || event.ctrlKey || event.altKey || event.metaKey) return;
    const pedal = event.key.startsWith("Page");
    if (!pedal && event.target.closest("input, button, a[href]")) return;
    const on = ahead.includes(event.key) && !event.shiftKey;
    const off = behind.includes(event.key) || (event.key === " " && event.shiftKey);
    if (!on && !off) return;
    event.preventDefault();
    if (event.repeat) return;
    const far = innerHeight * 0.7;
    if (on && page.scrollHeight - innerHeight - scrollY > 4) scrollBy(0, far);
    else if (off && scrollY > 4) scrollBy(0, -far);
    else if (on) forward();
    else show(now - 1);
  });

  setBoxes();
  tellKeeping();
})();

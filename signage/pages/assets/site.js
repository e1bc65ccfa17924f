/* What the pages can do beyond reading. Without this file every page still shows all its words and pictures.
   Nothing is stored and nothing is sent: a chosen look travels from page to page in the links. */
"use strict";

(() => {
  const root = document.documentElement;
  const asked = new URLSearchParams(location.search);
  const one = (selector, within = document) => within.querySelector(selector);
  const all = (selector, within = document) => [...within.querySelectorAll(selector)];
  const isRightToLeft = root.dir === "rtl";

  const inOwnDigits = (number) =>
    String(number).replace(/\d/g, (digit) => [...(root.dataset.digits || "0123456789")][Number(digit)]);
  const filled = (text, values) => text.replace(/\{(\w+)\}/g, (whole, name) => values[name] ?? whole);
  const say = (place, text, kind = "") => {
    place.hidden = false;
    place.className = `notice ${kind}`;
    place.textContent = text;
  };

  /* Look: light, dark or strong contrast, and the size of letters. */
  const SIZES = ["small", "", "large", "larger", "largest"];
  const LOOKS = ["light", "dark", "contrast"];
  const look = {
    look: LOOKS.includes(asked.get("look")) ? asked.get("look") : "",
    size: SIZES.includes(asked.get("size")) ? asked.get("size") : "",
  };

  function showLook() {
    for (const [name, value] of Object.entries(look)) {
      if (value) root.dataset[name] = value;
      else delete root.dataset[name];
    }
  }

  function carryLook() {
    for (const anchor of all("a[href]:not([href^='#'])")) {
      const [path, fragment] = anchor.getAttribute("href").split("#");
      const [file, query] = path.split("?");
      const values = new URLSearchParams(query);
      for (const [name, value] of Object.entries(look)) {
        if (value) values.set(name, value);
        else values.delete(name);
      }
      for (const name of ["r", "c"]) if (anchor.hreflang && asked.get(name)) values.set(name, asked.get(name));
      const text = values.toString();
      anchor.setAttribute("href", file + (text ? `?${text}` : "") + (fragment ? `#${fragment}` : ""));
    }
  }

  function offerLook() {
    const buttons = all("[data-set-look]");
    const mark = () => {
      for (const button of buttons) button.setAttribute("aria-pressed", button.dataset.setLook === look.look);
      showLook();
      carryLook();
    };
    for (const button of buttons) {
      button.addEventListener("click", () => {
        look.look = look.look === button.dataset.setLook ? "" : button.dataset.setLook;
        mark();
      });
    }
    for (const button of all("[data-size-step]")) {
      button.addEventListener("click", () => {
        const place = SIZES.indexOf(look.size) + Number(button.dataset.sizeStep);
        look.size = SIZES[Math.min(SIZES.length - 1, Math.max(0, place))];
        mark();
      });
    }
    mark();
  }

  function closeMenus() {
    const menus = all("details.menu");
    document.addEventListener("click", (event) => {
      for (const menu of menus) if (menu.open && !menu.contains(event.target)) menu.open = false;
    });
    document.addEventListener("keydown", (event) => {
      const menu = menus.find((each) => each.open);
      if (event.key !== "Escape" || !menu) return;
      menu.open = false;
      one("summary", menu).focus();
    });
  }

  /* Going on and back: arrow keys and swiping, in the direction of reading. */
  function offerSteps() {
    const target = { next: one("a[rel~='next']"), back: one("a[rel~='prev']") };
    if (!target.next && !target.back) return;
    const go = (isForwards) => (isForwards ? target.next : target.back)?.click();
    document.addEventListener("keydown", (event) => {
      const isBusy = event.defaultPrevented || event.altKey || event.ctrlKey || event.metaKey || event.shiftKey;
      if (isBusy || event.target.closest("input, [data-own-keys]")) return;
      if (event.key === "ArrowRight") go(!isRightToLeft);
      if (event.key === "ArrowLeft") go(isRightToLeft);
    });
    let start = null;
    const isEnlarged = () => (window.visualViewport?.scale ?? 1) > 1.05;
    document.addEventListener("touchstart", (event) => {
      const isOwn = event.target.closest("[data-own-keys], input, .menu");
      start = event.touches.length === 1 && !isOwn && !isEnlarged() ? event.touches[0] : null;
    }, { passive: true });
    document.addEventListener("touchend", (event) => {
      if (!start || event.touches.length) return;
      const across = event.changedTouches[0].clientX - start.clientX;
      const down = event.changedTouches[0].clientY - start.clientY;
      start = null;
      if (Math.abs(across) > 60 && Math.abs(across) > 2 * Math.abs(down)) go(across < 0 !== isRightToLeft);
    }, { passive: true });
  }

  /* Reading aloud, with a voice that lives on the phone; where there is none, there is no button. */
  function offerReading() {
    const button = one("[data-read]");
    const speech = window.speechSynthesis;
    if (!button || !speech || typeof SpeechSynthesisUtterance !== "function") return;
    const language = root.lang.toLowerCase();
    const ownVoice = () => {
      const voices = speech.getVoices().filter((voice) => voice.localService);
      const tags = voices.map((voice) => voice.lang.toLowerCase().replace("_", "-"));
      const exact = tags.indexOf(language);
      return voices[exact >= 0 ? exact : tags.findIndex((tag) => tag.split("-")[0] === root.dataset.speech)];
    };
    const show = () => { button.hidden = !ownVoice(); };
    const stop = () => {
      speech.cancel();
      button.textContent = button.dataset.read;
      button.setAttribute("aria-pressed", "false");
    };
    button.addEventListener("click", () => {
      if (button.getAttribute("aria-pressed") === "true") { stop(); return; }
      const words = all("[data-spoken]").map((part) => part.textContent.trim().replace(/\s+/g, " "));
      const utterance = new SpeechSynthesisUtterance(words.join(". "));
      utterance.voice = ownVoice();
      utterance.lang = utterance.voice.lang;
      utterance.onend = stop;
      utterance.onerror = stop;
      speech.cancel();
      speech.speak(utterance);
      button.textContent = button.dataset.stop;
      button.setAttribute("aria-pressed", "true");
    });
    window.addEventListener("pagehide", () => speech.cancel());
    speech.addEventListener?.("voiceschanged", show);
    show();
  }

  /* The time of a step. */
  function offerTimers() {
    for (const timer of all("[data-seconds]")) {
      const seconds = Number(timer.dataset.seconds);
      const [button, shown, over] = [one("button", timer), one("output", timer), one("[role=status]", timer)];
      const show = (left) => {
        shown.textContent = filled(timer.dataset.shown, { number: inOwnDigits(left) });
      };
      let ends = 0;
      let ticking = 0;
      const stop = () => {
        clearInterval(ticking);
        ticking = 0;
        button.textContent = button.dataset.start;
        show(seconds);
      };
      const tick = () => {
        const left = Math.max(0, Math.ceil((ends - performance.now()) / 1000));
        show(left);
        if (left > 0) return;
        stop();
        over.textContent = over.dataset.over;
        navigator.vibrate?.([200, 100, 200]);
      };
      button.addEventListener("click", () => {
        over.textContent = "";
        if (ticking) { stop(); return; }
        ends = performance.now() + seconds * 1000;
        ticking = setInterval(tick, 200);
        button.textContent = button.dataset.stop;
        tick();
      });
      stop();
      timer.hidden = false;
    }
  }

  /* Whether a sheet is current. Its code has a part for the steps and one for the words; a copy may have a number. A phone whose date is wrong cannot tell, and neither can old pages. Only what is signed is ever called current. */
  function judgeSheet(code, copy, known) {
    const today = new Date();
    const day = [today.getFullYear(), today.getMonth() + 1, today.getDate()]
      .map((part) => String(part).padStart(2, "0")).join("-");
    const [order, words] = code.split("-");
    const earlier = known.earlier.split(" ");
    if (known.standing === "withdrawn") return "withdrawn";
    if (code !== known.code && (earlier.includes(code) || earlier.includes(order))) return "replaced";
    if (day < known.madeOn || day > known.until) return "unknown";
    if (code !== known.code) return words && order === known.code.split("-")[0] ? "words" : "unknown";
    if (known.standing !== "current") return "draft";
    if (copy && known.gone.split(" ").includes(copy)) return "takenDown";
    if (copy && !known.good.split(" ").includes(copy)) return "stranger";
    return "current";
  }

  /* The two parts of a revision code and the number of a copy, as they are typed or stand in a scanned address. */
  function readSheet(typed, scannedCopy) {
    const text = typed.toUpperCase();
    const number = /\b([A-Z]{2})-?(\d{4,7})-?([0-9A-Z])\b/.exec(text);
    const rest = number ? text.replace(number[0], " ") : text;
    const parts = rest.split(/[^A-Z0-9]+/).filter((part) => part.length === 4);
    const copy = number ? number.slice(1).join("") : scannedCopy.toUpperCase().replace(/[^A-Z0-9]/g, "");
    return { code: parts.slice(-2).join("-"), copy };
  }

  /* A word joiner behind each hyphen keeps the number on one line. */
  const withHyphens = (copy) => copy.replace(/^(..)(.*)(.)$/, "$1-\u2060$2-\u2060$3");

  function offerSheetCheck() {
    const place = one("[data-made-on]");
    if (!place) return;
    const [answer, codes] = [one("[data-answer]", place), one("[data-codes]", place)];
    const show = (typed, scannedCopy) => {
      const { code, copy } = readSheet(typed, scannedCopy);
      if (!code) return;
      const state = judgeSheet(code, copy, place.dataset);
      const isolated = (text) => `\u2066${text}\u2069`;
      const number = isolated(withHyphens(copy));
      say(answer, filled(place.dataset[state], { number }), state === "current" ? "right" : "wrong");
      const onSheet = filled(place.dataset.sheetCode, { code: isolated(copy ? `${code} · ${withHyphens(copy)}` : code) });
      const standing = one("[data-standing-note]", place);
      if (standing) standing.hidden = state === place.dataset.standing;
      codes.hidden = false;
      codes.textContent = `${onSheet} — ${place.dataset.pageCode}`;
    };
    const form = one("form", place);
    form?.addEventListener("submit", (event) => {
      event.preventDefault();
      show(one("input", form).value, "");
    });
    if (form) form.hidden = false;
    show(asked.get("r") || "", asked.get("c") || "");
  }

  /* Exercises and quizzes: the answers were worked out when the pages were made. */

  /* The rank of an arrangement of 0 … n−1 among all arrangements in dictionary order. */
  function rank(order) {
    return order.reduce((sum, key, place) => {
      const smaller = order.slice(place + 1).filter((other) => other < key).length;
      return sum * (order.length - place) + smaller;
    }, 0);
  }

  function offerOrdering() {
    const list = one("[data-order]");
    if (!list) return;
    const judgement = JSON.parse(one("#judgement").textContent);
    const [spoken, answer] = [one("[data-place-words]"), one("[data-answer]")];
    const items = () => [...list.children];

    const number = () => items().forEach((item, place) => {
      one(".handle", item).textContent = inOwnDigits(place + 1);
      one("[data-move='-1']", item).disabled = place === 0;
      one("[data-move='1']", item).disabled = place === list.children.length - 1;
    });

    const move = (item, place, focus) => {
      const others = items().filter((other) => other !== item);
      const to = Math.min(others.length, Math.max(0, place));
      if (items().indexOf(item) === to) return;
      list.insertBefore(item, others[to] ?? null);
      item.classList.remove("moved");
      void item.offsetWidth;
      item.classList.add("moved");
      number();
      answer.hidden = true;
      const step = one("b", item).textContent.trim();
      spoken.textContent = filled(spoken.dataset.placeWords, { step, place: inOwnDigits(to + 1) });
      if (focus) (focus.disabled ? one(".handle", item) : focus).focus();
    };

    for (const item of items()) {
      item.prepend(one("#handle").content.cloneNode(true));
      item.append(one("#moves").content.cloneNode(true));
      const label = one("b", item).id;
      const handle = one(".handle", item);
      handle.id = `handle-${item.dataset.key}`;
      handle.setAttribute("aria-labelledby", `${handle.id} ${label}`);
      for (const button of all("button", item)) {
        if (!button.dataset.move) continue;
        button.setAttribute("aria-describedby", label);
        button.addEventListener("click", () => move(item, items().indexOf(item) + Number(button.dataset.move), button));
      }
      handle.addEventListener("keydown", (event) => {
        const by = { ArrowUp: -1, ArrowDown: 1 }[event.key];
        if (!by) return;
        event.preventDefault();
        move(item, items().indexOf(item) + by, handle);
      });
      dragByHandle(list, item, handle, move);
    }
    number();

    one("[data-judge]").addEventListener("click", () => {
      const order = items().map((item) => Number(item.dataset.key));
      const verdict = judgement.verdicts[rank(order)];
      say(answer, judgement.sentences[verdict], verdict === 0 ? "right" : verdict === 1 ? "" : "wrong");
    });
  }

  function dragByHandle(list, item, handle, move) {
    let isHeld = false;
    const release = () => {
      isHeld = false;
      item.classList.remove("held");
    };
    handle.addEventListener("pointerdown", (event) => {
      isHeld = event.isPrimary && event.button === 0;
      item.classList.toggle("held", isHeld);
      if (isHeld) handle.setPointerCapture(event.pointerId);
    });
    handle.addEventListener("pointermove", (event) => {
      if (!isHeld) return;
      const others = [...list.children].filter((other) => other !== item);
      const above = others.filter((other) => {
        const box = other.getBoundingClientRect();
        return box.top + box.height / 2 < event.clientY;
      });
      if (above.length === [...list.children].indexOf(item)) return;
      move(item, above.length, null);
      if (!handle.hasPointerCapture(event.pointerId)) handle.setPointerCapture(event.pointerId);
    });
    for (const end of ["pointerup", "pointercancel"]) handle.addEventListener(end, release);
  }

  /* A list of answers of which one is right: each becomes a button. */
  function offerChoices() {
    for (const list of all("[data-choices]")) {
      const place = one("[data-answer]", list.parentElement);
      for (const choice of [...list.children]) {
        const button = document.createElement("button");
        button.type = "button";
        button.append(...choice.childNodes);
        choice.append(button);
        button.addEventListener("click", () => {
          const isRight = "right" in choice.dataset;
          for (const other of list.children) other.classList.remove("right", "wrong");
          choice.classList.add(isRight ? "right" : "wrong");
          say(place, isRight ? list.dataset.right : list.dataset.notRight, isRight ? "right" : "wrong");
        });
      }
    }
  }

  root.classList.add("scripted");
  showLook();
  document.addEventListener("DOMContentLoaded", () => {
    for (const part of all("[data-needs-script]")) part.hidden = false;
    for (const part of all("[data-without-script]")) part.hidden = true;
    offerLook();
    closeMenus();
    offerSteps();
    offerReading();
    offerTimers();
    offerSheetCheck();
    offerOrdering();
    offerChoices();
  });
})();

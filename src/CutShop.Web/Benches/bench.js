// Keeps taps that could not be sent, each with the person who made it, and sends them in order when the network is back and that
// person is signed in. Each form carries a key made once, so a tap that is sent twice counts once. A step that has just appeared takes no
// tap for a moment, since the finger that made it appear may bounce. Without this script the forms work as plain forms.
(() => {
  "use strict";
  const store = "cutshop.taps";
  const refusals = "cutshop.refusals";
  const longestAnswer = 10000;
  const retryAfter = 3000;
  const rest = 800;
  const { person, name } = document.body.dataset;
  const unsent = document.getElementById("unsent");
  let sending = false;
  let retry = 0;

  const read = (place, key) => {
    try { return JSON.parse(place.getItem(key)) ?? []; } catch { return []; }
  };
  const taps = () => read(localStorage, store);
  const mine = () => taps().filter(tap => tap.person === person);
  const keep = list => localStorage.setItem(store, JSON.stringify(list));

  function newKey() {
    return [...crypto.getRandomValues(new Uint8Array(16))].map(b => b.toString(16).padStart(2, "0")).join("");
  }

  function lineOf(tag, text) {
    const line = document.createElement(tag);
    line.textContent = text;
    return line;
  }

  function show() {
    const list = mine();
    const others = taps().filter(tap => tap.person !== person);
    const lines = [];
    if (list.length > 0) {
      const items = document.createElement("ol");
      items.append(...list.map(tap => lineOf("li", tap.says)));
      lines.push(lineOf("strong", list.length === 1 ? unsent.dataset.one : unsent.dataset.many.replace("{0}", list.length)), items);
    }
    for (const who of new Set(others.map(tap => tap.name))) {
      const count = others.filter(tap => tap.name === who).length;
      lines.push(lineOf("p", (count === 1 ? unsent.dataset.othersOne : unsent.dataset.othersMany).replaceAll("{0}", () => who).replace("{1}", count)));
    }
    unsent.replaceChildren(...lines);
    unsent.hidden = lines.length === 0;
    const said = read(sessionStorage, refusals);
    if (said.length > 0) {
      scans.refuse(said.join(" "));
      sessionStorage.removeItem(refusals);
    }
  }

  // What a scan fills takes the next scan at once, and what must be typed first takes no bounce.
  function letRest(place) {
    const buttons = [...place.querySelectorAll("form[data-tap]:not([data-again], :has(input[required])) button:enabled")];
    for (const button of buttons) button.disabled = true;
    setTimeout(() => { for (const button of buttons) button.disabled = "sent" in button.form.dataset; }, rest);
  }

  function isPending(step) {
    step.classList.remove("now", "later");
    step.classList.add("pending");
    step.removeAttribute("aria-current");
    const doing = step.querySelector(".do");
    doing.replaceChildren(lineOf("p", unsent.dataset.pending));
    doing.hidden = false;
  }

  // A step that is tapped and not sent looks so, and the step after it can be tapped. A form that ends the work is all steps' that are left.
  function goOn(form) {
    const step = form.closest("ol.steps > li");
    if (!step) return;
    isPending(step);
    scans.focus();
    const next = step.nextElementSibling;
    if ("ends" in form.dataset) {
      for (let left = next; left; left = left.nextElementSibling) isPending(left);
      return;
    }
    const doing = next?.querySelector(".do");
    if (!doing) return;
    next.classList.replace("later", "now");
    next.setAttribute("aria-current", "step");
    doing.hidden = false;
    letRest(doing);
  }

  async function post(tap) {
    const gaveUp = new AbortController();
    const timer = setTimeout(() => gaveUp.abort(), longestAnswer);
    try {
      return await fetch(tap.to, {
        method: "POST",
        body: new URLSearchParams(tap.fields),
        headers: { "X-Tap": "1", "X-Tapped-By": tap.person },
        signal: gaveUp.signal,
      });
    } finally {
      clearTimeout(timer);
    }
  }

  // A page that was open for long carries a token that no longer counts: take a fresh one from the page as it is now.
  async function freshToken(tap) {
    const page = await fetch(tap.page, { headers: { Accept: "text/html" } });
    const fresh = new DOMParser().parseFromString(await page.text(), "text/html").querySelector("input[name=__RequestVerificationToken]");
    if (!fresh) return null;
    return { ...tap, fields: tap.fields.map(([name, value]) => [name, name === "__RequestVerificationToken" ? fresh.value : value]) };
  }

  async function answerOf(tap) {
    let answer = await post(tap);
    if (answer.status === 400) {
      const again = await freshToken(tap);
      if (again) answer = await post(again);
    }
    // Nobody is signed in any more: the tap is kept until its person is.
    if (answer.redirected && new URL(answer.url).pathname === "/sign-in") {
      location.assign("/sign-in?back=" + encodeURIComponent(tap.page));
      throw new Error("signed out");
    }
    // Somebody else is signed in than this page says: the tap is kept, and the page is theirs.
    if (answer.status === 409) {
      location.reload();
      throw new Error(answer.status);
    }
    if (answer.status === 403) return { to: tap.page, problem: `${tap.says}: ${unsent.dataset.forbidden}` };
    // The server is there and in trouble: the tap is not lost, it is sent again later.
    if (answer.status >= 500) throw new Error(answer.status);
    if (!answer.ok || !(answer.headers.get("Content-Type") ?? "").includes("json"))
      return { to: tap.page, problem: `${tap.says}: ${answer.status}` };
    return answer.json();
  }

  async function send() {
    if (sending) return;
    sending = true;
    clearTimeout(retry);
    let to = null;
    try {
      for (let list = mine(); list.length > 0; list = mine()) {
        const answer = await answerOf(list[0]);
        to = answer.to;
        keep(taps().filter(tap => tap.id !== list[0].id));
        if (answer.verdict) scans.keep(answer.verdict);
        else if (answer.problem) sessionStorage.setItem(refusals, JSON.stringify([...read(sessionStorage, refusals), answer.problem]));
      }
    } catch {
      retry = setTimeout(send, retryAfter);
    } finally {
      sending = false;
    }
    // A scan that is being typed is not cut off: it is sent next.
    if (to !== null && mine().length === 0 && !scans.isTyping()) location.assign(to);
    else show();
  }

  document.addEventListener("submit", event => {
    const form = event.target;
    if (!form.matches("form[data-tap]")) return;
    event.preventDefault();
    if ("sent" in form.dataset || scans.wasScannedInto(form)) return;
    const fields = [...new FormData(form, event.submitter)].map(([name, value]) => [name, String(value)]);
    const scan = "again" in form.dataset ? form.querySelector("[data-scan]") : null;
    const does = form.dataset.tap || (event.submitter ?? form.querySelector("button"))?.textContent.trim();
    const says = [document.querySelector("h1").textContent.trim(), does, scan?.value.trim()].filter(Boolean).join(": ");
    keep([...taps(), { id: newKey(), person, name, to: form.action, fields, says, page: location.pathname + location.search }]);
    if (scan) {
      // The next scan is another tap: it needs a key of its own.
      form.querySelector("input[name=key]").value = newKey();
      scan.defaultValue = scan.value = "";
      scans.focus();
    } else {
      form.dataset.sent = "";
      for (const other of form.querySelectorAll("button")) other.disabled = true;
    }
    send().then(() => { if (mine().length > 0) goOn(form); });
  });

  // The page as the browser kept it may be old: ask for the true one.
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
  addEventListener("online", send);
  document.addEventListener("toggle", event => { if (event.target.open) letRest(event.target); }, true);
  letRest(document);
  show();
  if (mine().length > 0) send();
})();

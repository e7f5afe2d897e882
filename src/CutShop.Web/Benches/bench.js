// Keeps taps that could not be sent, and sends them in order when the network is back. Each form carries a key made once, so a
// tap that is sent twice counts once. Without this script the forms work as plain forms.
(() => {
  "use strict";
  const store = "cutshop.taps";
  const refusals = "cutshop.refusals";
  const longestAnswer = 10000;
  const retryAfter = 3000;
  const unsent = document.getElementById("unsent");
  const refused = document.getElementById("refused");
  let sending = false;
  let retry = 0;

  const read = (place, key) => {
    try { return JSON.parse(place.getItem(key)) ?? []; } catch { return []; }
  };
  const taps = () => read(localStorage, store);
  const keep = list => localStorage.setItem(store, JSON.stringify(list));

  function newKey() {
    return [...crypto.getRandomValues(new Uint8Array(16))].map(b => b.toString(16).padStart(2, "0")).join("");
  }

  function show() {
    const list = taps();
    unsent.hidden = list.length === 0;
    if (list.length > 0) {
      const line = document.createElement("strong");
      line.textContent = list.length === 1 ? unsent.dataset.one : unsent.dataset.many.replace("{0}", list.length);
      const items = document.createElement("ol");
      for (const tap of list) {
        const item = document.createElement("li");
        item.textContent = tap.says;
        items.append(item);
      }
      unsent.replaceChildren(line, items);
    }
    const said = read(sessionStorage, refusals);
    if (said.length > 0) {
      refused.textContent = said.join(" ");
      refused.hidden = false;
      sessionStorage.removeItem(refusals);
    }
  }

  function isPending(step) {
    step.classList.remove("now", "later");
    step.classList.add("pending");
    step.removeAttribute("aria-current");
    const note = document.createElement("p");
    note.textContent = unsent.dataset.pending;
    const doing = step.querySelector(".do");
    doing.replaceChildren(note);
    doing.hidden = false;
  }

  // A step that is tapped and not sent looks so, and the step after it can be tapped. A form that ends the work is all steps' that are left.
  function goOn(form) {
    const step = form.closest("ol.steps > li");
    if (!step) return;
    isPending(step);
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
    doing.querySelector("button")?.focus();
  }

  async function post(tap) {
    const gaveUp = new AbortController();
    const timer = setTimeout(() => gaveUp.abort(), longestAnswer);
    try {
      return await fetch(tap.to, {
        method: "POST",
        body: new URLSearchParams(tap.fields),
        headers: { "X-Tap": "1" },
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
    // Nobody is signed in any more: the tap is kept until somebody is.
    if (answer.redirected && new URL(answer.url).pathname === "/sign-in") {
      location.assign("/sign-in?back=" + encodeURIComponent(tap.page));
      throw new Error("signed out");
    }
    if (answer.status === 403) return { to: tap.page, problem: unsent.dataset.forbidden };
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
      for (let list = taps(); list.length > 0; list = taps()) {
        const answer = await answerOf(list[0]);
        to = answer.to;
        keep(taps().filter(tap => tap.id !== list[0].id));
        if (answer.problem) sessionStorage.setItem(refusals, JSON.stringify([...read(sessionStorage, refusals), answer.problem]));
      }
    } catch {
      retry = setTimeout(send, retryAfter);
    } finally {
      sending = false;
    }
    if (to !== null && taps().length === 0) location.assign(to);
    else show();
  }

  document.addEventListener("submit", event => {
    const form = event.target;
    if (!form.matches("form[data-tap]")) return;
    event.preventDefault();
    if (form.dataset.sent) return;
    const fields = [...new FormData(form, event.submitter)].map(([name, value]) => [name, String(value)]);
    const button = event.submitter ?? form.querySelector("button");
    const says = [document.querySelector("h1").textContent.trim(), form.dataset.tap || button?.textContent.trim()].join(": ");
    keep([...taps(), { id: newKey(), to: form.action, fields, says, page: location.pathname + location.search }]);
    if ("again" in form.dataset) {
      // The next scan is another tap: it needs a key of its own.
      form.querySelector("input[name=key]").value = newKey();
      const field = form.querySelector("input:not([type=hidden])");
      field.value = "";
      field.focus();
    } else {
      form.dataset.sent = "1";
      for (const other of form.querySelectorAll("button")) other.disabled = true;
    }
    send().then(() => { if (taps().length > 0) goOn(form); });
  });

  // The page as the browser kept it may be old: ask for the true one.
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
  addEventListener("online", send);
  show();
  if (taps().length > 0) send();
})();

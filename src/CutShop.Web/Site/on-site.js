// Keeps what an installer sends where there is no network, shows what is not sent yet and what the shop refused, and stores a
// site pack. Without this script the forms work as plain forms.
"use strict";
(() => {
  const unsent = document.getElementById("unsent");
  const refused = document.getElementById("refused");
  const pack = document.getElementById("pack");
  const worker = navigator.serviceWorker;
  const again = 30000;
  const soon = 3000;
  const longestLeaving = 10000;
  const not = "not-";
  let retry = 0;
  let leftAt = -Infinity;

  const isReport = tap => tap.to.endsWith("/report");
  const isSpans = tap => tap.to.endsWith("/measure");

  function items(list, taps, more = () => []) {
    list.replaceChildren(...taps.map(tap => {
      const item = document.createElement("li");
      item.append(tap.problem ? `${tap.says}: ${tap.problem}` : tap.says, ...more(tap));
      return item;
    }));
  }

  function decide(tap) {
    const look = document.createElement("a");
    look.className = "button";
    look.href = `/p/${tap.code}`;
    look.textContent = refused.dataset.look;
    const seen = document.createElement("button");
    seen.type = "button";
    seen.textContent = refused.dataset.seen;
    seen.addEventListener("click", () => outbox.dismiss(tap.id).then(show));
    const choices = document.createElement("p");
    choices.className = "actions";
    choices.append(look, seen);
    if (isReport(tap)) choices.prepend(writeAgain(tap));
    return [choices];
  }

  function writeAgain(tap) {
    const again = document.createElement("a");
    again.className = "button main";
    again.href = `/p/${tap.code}/report#again=${tap.id}`;
    again.textContent = refused.dataset.again;
    return again;
  }

  // A report that the shop refused is written on from what was typed and photographed.
  async function fillAgain() {
    const form = document.querySelector("form[data-outbox=report]");
    const id = Number(location.hash.match(/^#again=(\d+)$/)?.[1]);
    const tap = form && id ? (await outbox.all()).find(one => one.id === id) : undefined;
    if (!tap) return;
    form.dataset.again = id;
    for (const [name, value] of tap.fields) {
      if (name === "kind" || name === "note") form.elements[name].value = value;
      if (name === "photo") {
        const files = new DataTransfer();
        files.items.add(value);
        form.elements.photo.files = files.files;
        checkPhoto(form.elements.photo);
      }
    }
  }

  function checkPhoto(input) {
    input.setCustomValidity([...input.files].some(file => file.size > Number(input.dataset.most)) ? input.dataset.tooLarge : "");
  }

  async function show() {
    const taps = await outbox.all();
    const waiting = taps.filter(tap => tap.problem === undefined);
    const said = taps.filter(tap => tap.problem !== undefined);
    unsent.hidden = waiting.length === 0;
    unsent.querySelector("strong").textContent = waiting.length === 1 ? unsent.dataset.one : unsent.dataset.many.replace("{0}", waiting.length);
    items(unsent.querySelector("ol"), waiting);
    refused.hidden = said.length === 0;
    items(refused.querySelector("ol"), said, decide);
    for (const tap of waiting) if (tap.state) mark(tap);
    const span = waiting.findLast(tap => isSpans(tap) && document.querySelector(`form[data-outbox=measure][action="${tap.to}"]`));
    if (span) spans.show(span);
    count();
    clearTimeout(retry);
    if (waiting.length > 0) retry = setTimeout(send, again);
  }

  // A bore is ticked on whichever page of its line; a piece has an address of its own.
  const formsOf = tap => [...document.querySelectorAll(tap.place ? "form[data-outbox=bored]" : "form[data-outbox=installed]")]
    .filter(form => tap.place ? form.dataset.place === tap.place : form.getAttribute("action") === tap.to);

  // A mark that is kept and not sent shows as it will be, and can be taken back.
  function mark(tap) {
    const [set, unset] = tap.place ? [unsent.dataset.tick, unsent.dataset.untick] : [unsent.dataset.mark, unsent.dataset.unmark];
    for (const form of formsOf(tap)) {
      const button = form.querySelector("button");
      const isSet = !tap.state.startsWith(not);
      form.elements.seen.value = tap.state;
      button.value = isSet ? `${not}${tap.state}` : tap.state.slice(not.length);
      button.textContent = isSet ? unset : set;
      button.classList.toggle("main", !isSet);
      form.classList.add("pending");
      const asked = form.closest("details");
      if (asked) asked.open = true;
    }
  }

  // How many of a line's pieces are up, or of its bores made, with those that are not sent yet.
  function count() {
    const place = document.querySelector("[data-counts]");
    if (!place) return;
    const marks = [...document.querySelectorAll(`form[data-outbox=${place.dataset.counts}]`)];
    const done = marks.filter(form => !form.elements.seen.value.startsWith(not)).length;
    place.textContent = place.dataset.says.replace("{0}", done).replace("{1}", marks.length);
  }

  async function send() {
    const active = worker && (await worker.getRegistration())?.active;
    if (active) active.postMessage({ send: true });
    else await shown(await outbox.send());
  }

  // What the shop has by now is shown as it is; what it refused is shown first, and a report that is being written stays.
  async function shown(sent) {
    const isRefused = (await outbox.all()).some(tap => tap.problem !== undefined);
    if (sent.length === 0 || isRefused || isWritten(sent)) return show();
    // Whoever is on the way to another page is not called back.
    if (Date.now() - leftAt < longestLeaving) return;
    const report = sent.find(tap => tap.isReport && location.pathname === `/p/${tap.code}`);
    if (report) location.replace(`/p/${report.code}?reported=1`);
    else location.reload();
  }

  // True where the page holds what is being typed, and nothing of it was sent.
  function isWritten(sent) {
    if (document.querySelector("form[data-outbox=report] textarea")) return true;
    return document.querySelector("form[data-outbox=measure]") && !sent.some(tap => tap.isSpans && location.pathname === `/p/${tap.code}/measure`);
  }

  async function keep(form, submitter) {
    const fields = [...new FormData(form, submitter)].filter(([, value]) => !(value instanceof File) || value.size > 0);
    const values = Object.fromEntries(fields);
    const card = form.closest("li")?.querySelector(".name") ?? document.querySelector("h1");
    const to = new URL(form.action).pathname;
    const code = to.split("/")[2].replace(/[-\s]/g, "").toUpperCase();
    const what = form.dataset.says ? "" : values.kind ? form.querySelector(`input[value=${values.kind}]`).closest("label").textContent : submitter.textContent;
    await outbox.add({ to: to.replace(/\/p\/[^/]+/i, `/p/${code}`), fields, code, state: values.state, place: form.dataset.place, says: form.dataset.says ?? `${card.textContent.trim()}: ${what.trim()}` });
    if (form.dataset.again) await outbox.dismiss(Number(form.dataset.again));
    worker?.getRegistration().then(one => one?.sync?.register("outbox")).catch(() => { });
    // The page that comes next sends it.
    if (values.kind) return location.assign(`/p/${code}`);
    await show();
    await send();
  }

  // A browser that keeps nothing sends the form itself.
  function sendPlain(form, submitter) {
    form.dataset.plain = "1";
    form.requestSubmit(submitter);
  }

  document.addEventListener("change", event => {
    if (event.target.matches("input[type=file][data-most]")) checkPhoto(event.target);
  });
  addEventListener("hashchange", fillAgain);

  document.addEventListener("submit", event => {
    const form = event.target;
    if (!form.matches("form[data-outbox]") || form.dataset.plain) return;
    event.preventDefault();
    const submitter = event.submitter ?? form.querySelector("button");
    // What cannot be told here, the shop may know.
    if (form.dataset.outbox === "measure" && !spans.answer()) {
      if (navigator.onLine) sendPlain(form, submitter);
      return;
    }
    keep(form, submitter).catch(() => sendPlain(form, submitter));
  });

  async function storePack(place) {
    const { active } = await worker.ready;
    const heard = new MessageChannel();
    const answer = new Promise(done => { heard.port1.onmessage = event => done(event.data); });
    place.textContent = place.dataset.storing;
    active.postMessage({ store: place.dataset.code }, [heard.port2]);
    const isStored = (await answer).pieces !== undefined;
    if (isStored) navigator.storage?.persist?.();
    const isKept = isStored || await caches.has(`cutshop pack ${place.dataset.code}`);
    place.textContent = isStored ? place.dataset.stored : isKept ? place.dataset.kept : place.dataset.failed;
  }

  // A stored page says as of when it is.
  function showAge() {
    const place = document.getElementById("age");
    const at = document.body.dataset.stored && new Date(document.body.dataset.stored);
    if (!at) return;
    const [language, isThisWeek] = [document.documentElement.lang, Date.now() - at < 6 * 24 * 3600 * 1000];
    const day = at.toLocaleDateString(language, isThisWeek ? { weekday: "long" } : { weekday: "long", day: "numeric", month: "long", year: "numeric" });
    const time = at.toLocaleTimeString(language, { hour: "2-digit", minute: "2-digit", hour12: false });
    place.textContent = place.dataset.says.replace("{0}", `${day} ${time}`);
    place.hidden = false;
  }

  // Asks whether the stored labels still count. The page of one that does not is stored anew, and shown if it is this one.
  async function check() {
    const active = worker && (await worker.getRegistration())?.active;
    if (!active) return;
    const heard = new MessageChannel();
    const answer = new Promise(done => { heard.port1.onmessage = event => done(event.data); });
    active.postMessage({ check: true }, [heard.port2]);
    const { gone } = await answer;
    const shown = location.pathname.split("/")[2]?.replace(/[-\s]/g, "").toUpperCase();
    // A network that has just come back may not carry the first question.
    if (!gone && navigator.onLine) setTimeout(check, soon);
    else if (gone?.includes(shown) && document.body.dataset.stored) location.reload();
  }

  outbox.listen(shown);
  addEventListener("online", () => {
    send();
    check();
    if (pack && worker) storePack(pack);
  });
  addEventListener("beforeunload", () => { leftAt = Date.now(); });
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
  if (pack && worker) storePack(pack);
  fillAgain();
  showAge();
  check();
  show().then(send);
})();

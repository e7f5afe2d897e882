// Keeps what an installer sends where there is no network, shows what is not sent yet and what the shop refused, and stores a
// site pack. Without this script the forms work as plain forms.
"use strict";
(() => {
  const unsent = document.getElementById("unsent");
  const refused = document.getElementById("refused");
  const pack = document.getElementById("pack");
  const worker = navigator.serviceWorker;
  const again = 30000;
  const longestLeaving = 10000;
  let retry = 0;
  let leftAt = -Infinity;

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
    if (tap.state === undefined) choices.prepend(writeAgain(tap));
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
    clearTimeout(retry);
    if (waiting.length > 0) retry = setTimeout(send, again);
  }

  // A mark that is kept and not sent shows as it will be, and can be taken back.
  function mark(tap) {
    for (const form of document.querySelectorAll(`form[data-outbox=installed][action="${tap.to}"]`)) {
      const button = form.querySelector("button");
      const isInstalled = tap.state === "installed";
      form.elements.seen.value = tap.state;
      button.value = isInstalled ? "not-installed" : "installed";
      button.textContent = isInstalled ? unsent.dataset.unmark : unsent.dataset.mark;
      button.classList.toggle("main", !isInstalled);
      form.classList.add("pending");
    }
  }

  async function send() {
    const active = worker && (await worker.getRegistration())?.active;
    if (active) active.postMessage({ send: true });
    else await shown(await outbox.send());
  }

  // What the shop has by now is shown as it is; what it refused is shown first, and a report that is being written stays.
  async function shown(sent) {
    const isRefused = (await outbox.all()).some(tap => tap.problem !== undefined);
    if (sent.length === 0 || isRefused || document.querySelector("form[data-outbox=report]")) return show();
    // Whoever is on the way to another page is not called back.
    if (Date.now() - leftAt < longestLeaving) return;
    const report = sent.find(tap => tap.isReport && location.pathname === `/p/${tap.code}`);
    if (report) location.replace(`/p/${report.code}?reported=1`);
    else location.reload();
  }

  async function keep(form, submitter) {
    const fields = [...new FormData(form, submitter)].filter(([, value]) => !(value instanceof File) || value.size > 0);
    const values = Object.fromEntries(fields);
    const card = form.closest("li")?.querySelector(".name") ?? document.querySelector("h1");
    const to = new URL(form.action).pathname;
    const code = to.split("/")[2].replace(/[-\s]/g, "").toUpperCase();
    const what = values.kind ? form.querySelector(`input[value=${values.kind}]`).closest("label").textContent : submitter.textContent;
    await outbox.add({ to: to.replace(/\/p\/[^/]+/i, `/p/${code}`), fields, code, state: values.state, says: `${card.textContent.trim()}: ${what.trim()}` });
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

  outbox.listen(shown);
  addEventListener("online", () => {
    send();
    if (pack && worker) storePack(pack);
  });
  addEventListener("beforeunload", () => { leftAt = Date.now(); });
  addEventListener("pageshow", event => { if (event.persisted) location.reload(); });
  if (pack && worker) storePack(pack);
  fillAgain();
  show().then(send);
})();

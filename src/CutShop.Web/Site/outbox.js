// What an installer sent off, kept in the phone's database until the shop has it: sent in order, each with the key it was
// made with, so that what is sent twice counts once. Pages and the worker use it.
"use strict";
const outbox = (() => {
  const store = "taps";
  const longestAnswer = 60000;
  // A tap that is sent at once needs no time of its own, which spares it a wrong clock; a later one tells when it was made.
  const atOnce = 10000;
  const news = new BroadcastChannel("cutshop outbox");

  const opened = new Promise((done, fail) => {
    const request = indexedDB.open("cutshop", 1);
    request.onupgradeneeded = () => request.result.createObjectStore(store, { keyPath: "id", autoIncrement: true });
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });

  async function use(mode, work) {
    const database = await opened;
    return new Promise((done, fail) => {
      const transaction = database.transaction(store, mode);
      const request = work(transaction.objectStore(store));
      transaction.oncomplete = () => done(request.result);
      transaction.onabort = () => fail(transaction.error);
    });
  }

  const all = () => use("readonly", taps => taps.getAll());
  const put = tap => use("readwrite", taps => taps.put(tap));
  const remove = id => use("readwrite", taps => taps.delete(id));
  const tell = sent => news.postMessage({ sent });

  function newKey() {
    return [...crypto.getRandomValues(new Uint8Array(16))].map(b => b.toString(16).padStart(2, "0")).join("");
  }

  // A tap: to (address), fields (names and values), code (the piece), says (for people), madeAt.
  async function add(tap) {
    await put({ ...tap, key: newKey(), madeAt: Date.now(), isLate: !navigator.onLine });
    tell([]);
  }

  async function dismiss(id) {
    await remove(id);
    tell([]);
  }

  function bodyOf(tap) {
    const body = new FormData();
    for (const [name, value] of tap.fields) body.append(name, value);
    body.set("key", tap.key);
    if (tap.isLate || Date.now() - tap.madeAt > atOnce) body.set("at", new Date(tap.madeAt).toISOString());
    return body;
  }

  async function post(tap) {
    const gaveUp = new AbortController();
    const timer = setTimeout(() => gaveUp.abort(), longestAnswer);
    try {
      return await fetch(tap.to, { method: "POST", body: bodyOf(tap), headers: { Accept: "application/json" }, signal: gaveUp.signal });
    } finally {
      clearTimeout(timer);
    }
  }

  // Whether the shop itself has answered for good: not a sign-in page of somebody's network, not a server in trouble.
  function isFinal(answer) {
    const busy = answer.status >= 500 || answer.status === 429 || answer.status === 408;
    return !busy && (answer.headers.get("Content-Type") ?? "").includes("json");
  }

  // The shop said no: the tap stays, with its reason, until a person has seen it.
  async function refused(tap, answer) {
    const problem = await answer.json();
    await put({ ...tap, problem: problem.title ?? String(answer.status) });
  }

  async function sendAll() {
    const sent = [];
    for (const tap of (await all()).filter(one => one.problem === undefined)) {
      try {
        const answer = await post(tap);
        if (!isFinal(answer)) throw new Error(answer.status);
        if (answer.ok) await remove(tap.id);
        else await refused(tap, answer);
        sent.push({ code: tap.code, isReport: tap.to.endsWith("/report") && answer.ok, isSpans: tap.to.endsWith("/measure") });
      } catch {
        await put({ ...tap, isLate: true });
        break;
      }
    }
    return sent;
  }

  // One at a time, whichever page or worker asks, so that the order holds.
  async function send(afterwards = async () => { }) {
    const sent = await (navigator.locks ? navigator.locks.request("cutshop outbox", sendAll) : sendAll());
    if (sent.length > 0) {
      await afterwards(sent);
      tell(sent);
    }
    return sent;
  }

  const listen = heard => news.addEventListener("message", event => heard(event.data.sent));

  return { add, all, dismiss, send, listen };
})();

// Answers where there is no network: with the pages of a stored site pack, else with a page that says so. Pages of people who
// are signed in are never stored: what is stored is what a stranger with the label gets.
"use strict";
const fixed = "cutshop fixed";
const packs = "cutshop pack ";
const noNetwork = "/no-network";
const ended = "Label-Ended";
const patience = 4000;

addEventListener("install", event => event.waitUntil(storeFixed().then(() => skipWaiting())));
addEventListener("activate", event => event.waitUntil(clients.claim()));

async function storeFixed() {
  const page = await fetch(noNetwork, { credentials: "omit", cache: "no-store" });
  if (!page.ok) throw new Error(page.status);
  const cache = await caches.open(fixed);
  const html = await page.text();
  await storeAssets(cache, html);
  await cache.put(noNetwork, asPage(html, page));
}

// A stored page is held to the same rules as the answer that it came in.
function asPage(html, answer, storedAt, isEnded = false) {
  const headers = new Headers({ "Content-Type": "text/html; charset=utf-8" });
  if (isEnded) headers.set(ended, "1");
  for (const rule of ["Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy"]) headers.set(rule, answer.headers.get(rule));
  return new Response(storedAt ? html.replace("<body class=\"on-site\"", `$& data-stored="${storedAt}"`) : html, { headers });
}

// Addresses of assets change with their content, so one that is stored is never old.
async function storeAssets(cache, html, known = new Set()) {
  const addresses = (html.match(/\/assets\/[0-9a-f]+\/[\w.-]+/g) ?? []).filter(address => !known.has(address));
  await Promise.all(addresses.map(async address => await cache.match(address) ?? await cache.add(address)));
  for (const address of addresses) known.add(address);
}

async function* linesOf(answer) {
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    const lines = (rest + part.value).split("\n");
    rest = lines.pop();
    for (const line of lines) yield JSON.parse(line);
  }
}

// Stores a pack page by page as it comes, or what changed with one piece of it.
async function storePack(code, piece) {
  const answer = await fetch(`/s/${code}/pages${piece ? `?piece=${piece}` : ""}`, { cache: "no-store" });
  if (!answer.ok) throw new Error(answer.status);
  const cache = await caches.open(packs + code);
  const wanted = new Set();
  const now = new Date().toISOString();
  for await (const { path, html, same, pieces, ended } of linesOf(answer)) {
    if (html) await storeAssets(cache, html, wanted);
    if (html) await cache.put(path, asPage(html, answer, now, ended));
    if (same) await cache.put(path, Response.redirect(`${same}#${path.split("/")[2]}`));
    wanted.add(path);
    if (pieces === undefined) continue;
    if (!piece) await forget(cache, wanted);
    return pieces;
  }
  throw new Error("cut off");
}

async function forget(cache, wanted) {
  for (const request of await cache.keys())
    if (!wanted.has(new URL(request.url).pathname)) await cache.delete(request);
}

// What was sent changed its pieces: their stored pages are fetched anew.
async function freshen(sent) {
  for (const name of await caches.keys()) {
    if (!name.startsWith(packs)) continue;
    const cache = await caches.open(name);
    for (const code of new Set(sent.map(tap => tap.code)))
      if (await cache.match(`/p/${code}`)) await storePack(name.slice(packs.length), code).catch(() => { });
  }
}

// The codes whose stored labels count no more: revoked, or of a piece that is no longer wanted. Their pages then say so.
async function check() {
  const gone = [];
  for (const name of await caches.keys()) {
    if (!name.startsWith(packs)) continue;
    const answer = await fetch(`/s/${name.slice(packs.length)}/codes`, { cache: "no-store" });
    if (!answer.ok) continue;
    const good = new Set((await answer.json()).codes);
    const cache = await caches.open(name);
    const stored = new Set((await cache.keys()).map(request => new URL(request.url).pathname.match(/^\/p\/([^/]+)/)?.[1]));
    for (const code of stored)
      if (code && !good.has(code) && await endLabel(cache, name, code)) gone.push(code);
  }
  return gone;
}

// Stores what the label opens now in place of what it opened; false where that is stored already. Where the pack is no longer
// known either, nothing is left.
async function endLabel(cache, name, code) {
  const page = await cache.match(`/p/${code}`);
  if (!page || page.headers.has(ended)) return false;
  await storePack(name.slice(packs.length), code)
    .catch(() => Promise.all(["", "/line", "/bores", "/set-out", "/measure", "/report"].map(rest => cache.delete(`/p/${code}${rest}`))));
  return true;
}

// What is typed or scanned as a code may be a label's whole address.
const plain = text => {
  const code = decodeURIComponent(text);
  return (code.match(/\/p\/([^/?#]+)/i)?.[1] ?? code).replace(/[-\s]/g, "").toUpperCase();
};

// The path that a page is stored under, however its address is written.
function placeOf(url) {
  const [, kind, code, rest = ""] = url.pathname.match(/^\/([ps])\/([^/]+)(\/line|\/bores|\/set-out|\/measure|\/report)?\/?$/i) ?? [];
  if (code) return `/${kind.toLowerCase()}/${plain(code)}${rest.toLowerCase()}`;
  if (url.pathname.toLowerCase() !== "/p") return null;
  return url.searchParams.has("code") ? `/p/${plain(url.searchParams.get("code"))}` : "/p";
}

async function answerPage(event, url) {
  const { request } = event;
  const place = placeOf(url);
  const kept = place && await caches.match(place);
  if (!kept) return fetch(request).catch(() => caches.match(noNetwork));
  const isTyped = url.searchParams.has("code");
  return inTime(request).then(answer => heard(event, answer, place)).catch(() => isTyped ? Response.redirect(place) : kept);
}

// A label that was revoked since is stored as such.
function heard(event, answer, place) {
  if (answer.status === 410) event.waitUntil(endEverywhere(place.split("/")[2]).catch(() => { }));
  return answer;
}

async function endEverywhere(code) {
  for (const name of await caches.keys())
    if (name.startsWith(packs)) await endLabel(await caches.open(name), name, code);
}

// The page from the shop, if it comes before patience ends and the shop is well.
function inTime(request) {
  return new Promise((done, fail) => {
    setTimeout(fail, patience);
    fetch(request).then(answer => answer.status >= 500 ? fail() : done(answer), fail);
  });
}

addEventListener("fetch", event => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== location.origin) return;
  if (url.pathname.startsWith("/assets/")) event.respondWith(caches.match(request).then(kept => kept ?? fetch(request)));
  else if (request.mode === "navigate") event.respondWith(answerPage(event, url));
});

addEventListener("sync", event => event.waitUntil(outbox.send(freshen)));

addEventListener("message", event => {
  const [port] = event.ports;
  if (event.data.store) {
    event.waitUntil(storePack(event.data.store).then(pieces => port.postMessage({ pieces }), () => port.postMessage({})));
  } else if (event.data.check) {
    event.waitUntil(check().then(gone => port.postMessage({ gone }), () => port.postMessage({})));
  } else if (event.data.send) {
    event.waitUntil(outbox.send(freshen));
  }
});

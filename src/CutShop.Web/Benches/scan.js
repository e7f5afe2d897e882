// Reads scans. A scanner types: what is typed goes into the scan field unless another field has the focus, so that a scan never presses
// a button. What came of a scan covers the screen until a tap or the next scan. Without this script the scan field works as a plain form.
const scans = (() => {
  "use strict";
  const store = "cutshop.verdicts";
  const longestAnswer = 10000;
  const rightIsShown = 4000;
  const form = document.querySelector("form.scan");
  const field = document.querySelector("main [data-scan]") ?? form.querySelector("[data-scan]");
  const refused = document.getElementById("refused");
  const open = () => document.querySelector(".verdict");

  const takesText = at => at.matches("input:not([type=checkbox], [type=radio]), select, textarea");

  // A keyboard on the screen opens where somebody taps the field, not where the page puts the focus there.
  function focus() {
    field.inputMode = "none";
    field.focus({ preventScroll: true });
  }

  function refuse(text) {
    refused.textContent = text;
    refused.hidden = false;
  }

  function kept() {
    try { return JSON.parse(sessionStorage.getItem(store)) ?? []; } catch { return []; }
  }

  // Every wrong one is shown, and of the right ones the last.
  function keep(verdict) {
    sessionStorage.setItem(store, JSON.stringify([...kept().filter(earlier => !earlier.isRight), verdict]));
  }

  function showNext() {
    const [next, ...others] = kept();
    if (!next || open()) return;
    sessionStorage.setItem(store, JSON.stringify(others));
    const verdict = document.createElement("div");
    verdict.className = `verdict ${next.isRight ? "right" : "wrong"}`;
    verdict.setAttribute("role", "alert");
    const heading = document.createElement("strong");
    heading.textContent = next.heading;
    verdict.append(heading, ...next.lines.map(line => {
      const paragraph = document.createElement("p");
      paragraph.textContent = line;
      return paragraph;
    }));
    document.getElementById("content").prepend(verdict);
    watch(verdict);
  }

  function watch(verdict) {
    if (verdict.matches(".right")) setTimeout(() => close(verdict), rightIsShown);
  }

  function close(verdict) {
    if (!verdict.isConnected) return;
    verdict.remove();
    if (document.activeElement === document.body) focus();
    showNext();
  }

  // The shop is asked first whether it is there: without it a scan opens nothing, and the page stays.
  async function lookUp() {
    const scanned = form.querySelector("[data-scan]").value.trim();
    const to = `${form.action}?${new URLSearchParams(new FormData(form))}`;
    try {
      await fetch(to, { redirect: "manual", signal: AbortSignal.timeout(longestAnswer) });
    } catch {
      refuse(form.dataset.noNetwork.replace("{0}", () => scanned));
      form.reset();
      return;
    }
    location.assign(to);
  }

  // An address that was scanned while another field had the focus goes where scans go. What has no address the shop tells from a length.
  function wasScannedInto(other) {
    const typed = other.querySelector("input:not([type=hidden], [data-scan])");
    const at = typed?.value.search(/https?:\/\//i) ?? -1;
    if (at < 0) return false;
    field.value = typed.value.slice(at);
    typed.value = typed.defaultValue;
    focus();
    field.form.requestSubmit();
    return true;
  }

  form.addEventListener("submit", event => {
    event.preventDefault();
    lookUp();
  });
  field.addEventListener("pointerdown", () => { field.inputMode = "text"; });
  document.addEventListener("click", event => {
    const verdict = event.target.closest(".verdict");
    if (verdict) close(verdict);
  });
  document.addEventListener("keydown", event => {
    const verdict = open();
    const isCharacter = event.key.length === 1 && !event.ctrlKey && !event.metaKey && !event.altKey;
    if (verdict && (isCharacter || ["Enter", "Escape"].includes(event.key))) {
      // A key that closes what covers the page does nothing under it; the first character of the next scan does.
      if (event.key === " " || !isCharacter) event.preventDefault();
      close(verdict);
    }
    if (!isCharacter || event.key === " " || takesText(document.activeElement)) return;
    field.value = "";
    focus();
  }, true);

  document.querySelectorAll(".verdict").forEach(watch);
  showNext();
  return { focus, keep, refuse, wasScannedInto, isTyping: () => field.value !== field.defaultValue };
})();

// Improves the draft's form: shows what it comes to while it is typed, and keeps it at each step. Without it the page works
// with its buttons alone.
"use strict";
(() => {
  const form = document.querySelector("form[data-desk]");
  const place = document.getElementById("preview-place");
  const standing = document.getElementById("standing");
  const totals = document.getElementById("totals");
  const saved = document.getElementById("saved");
  if (!form || !place) return;

  const waitAfterTyping = 400;
  let typing = 0;
  let asked = 0;
  let saving = Promise.resolve();
  let isSaving = false;
  let isStale = false;

  // A page that goes to sleep may still send a small form.
  const mostWhenAsleep = 60000;
  const send = (address, fields) => {
    const body = new URLSearchParams(fields);
    return fetch(address, { method: "POST", body, credentials: "same-origin", keepalive: document.hidden && body.toString().length < mostWhenAsleep });
  };

  // A preview sends the fields that were typed in since the page came: the shop has the others.
  const asItCame = (field) => (field.options ? [...field.options].find((option) => option.defaultSelected)?.value : field.defaultValue);
  const came = new Map([...new FormData(form).keys()].map((name) => [name, asItCame(form.elements[name])]));
  const typedIn = new Set(["version", "__RequestVerificationToken"]);
  const changes = () => {
    const fields = [...new FormData(form)];
    for (const [name, value] of fields) if (value !== came.get(name)) typedIn.add(name);
    return [...fields.filter(([name]) => typedIn.has(name) && name !== "at"), ["at", lookedAt]];
  };

  const say = (text, isTrouble) => {
    saved.textContent = text;
    saved.classList.toggle("trouble", isTrouble);
  };

  const putNotes = (section) => {
    const byField = new Map([...section.querySelectorAll("[data-note-for]")].map((note) => [note.dataset.noteFor, note.innerHTML]));
    for (const note of form.querySelectorAll("[data-note]")) {
      const html = byField.get(note.dataset.note);
      if (html === undefined) note.querySelectorAll(".error, .warning").forEach((gone) => gone.remove());
      else if (note.innerHTML !== html) note.innerHTML = html;
      const box = document.getElementById(note.dataset.note);
      const isWrong = note.querySelector(".error") !== null;
      if (isWrong) note.closest("details:not([open])")?.setAttribute("open", "");
      if (box) {
        if (isWrong) box.setAttribute("aria-invalid", "true");
        else box.removeAttribute("aria-invalid");
      }
    }
  };

  // The stretch of posts that is drawn: the one somebody types in or has chosen. A row belongs to every stretch of its line.
  const stretch = () => document.getElementById("at");
  let lookedAt = stretch()?.value ?? "";
  const lookAt = (field) => {
    const choice = stretch();
    const [, line, place] = field.match(/^lines\[(\d+)\]\.(?:(?:posts|sections)\[(\d+)\])?/) ?? [];
    if (line === undefined) return false;
    if (place !== undefined || !lookedAt.startsWith(`lines[${line}]`)) lookedAt = field;
    if (!choice) return false;
    const parts = [...choice.options].map((option) => [option, ...option.value.match(/\d+/g)]).filter(([, ofLine]) => ofLine === line);
    const isHere = parts.some(([option]) => option.selected);
    const [wanted] = (place === undefined ? (isHere ? null : parts[0]) : parts.findLast(([, , first]) => Number(first) <= Number(place))) ?? [];
    if (!wanted || wanted.selected) return false;
    wanted.selected = true;
    return true;
  };

  const withScript = (part) => {
    for (const needless of part.querySelectorAll("[data-without-script]")) needless.remove();
    return part;
  };

  const put = (part) => {
    const focused = place.contains(document.activeElement) ? document.activeElement.id : "";
    document.getElementById(part.id).replaceWith(withScript(part));
    if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
  };

  // A part of what the draft comes to; null where there is none, or where somebody typed on meanwhile.
  const ask = async (address, fields, id, turn) => {
    const answer = await send(address, fields);
    if (!answer.ok || turn !== asked) return null;
    const html = await answer.text();
    const part = turn === asked ? new DOMParser().parseFromString(html, "text/html").getElementById(id) : null;
    return part && document.importNode(part, true);
  };

  const preview = async () => {
    const turn = ++asked;
    try {
      const fields = changes();
      const section = await ask(form.dataset.preview, fields, "preview", turn);
      if (!section) return;
      put(section);
      putNotes(section);
      if (standing.textContent !== section.dataset.standing) standing.textContent = section.dataset.standing;
      totals.innerHTML = section.querySelector("[data-totals]").innerHTML;
      const plan = await ask(form.dataset.plan, fields, "plan", turn);
      if (plan) put(plan);
    } catch {
      // The next change asks again; Save and check always works.
    }
  };

  const save = () => {
    if (isStale) return saving;
    saving = saving.then(async () => {
      isSaving = true;
      try {
        const answer = await send(form.dataset.save, new FormData(form));
        if (answer.status === 409) {
          isStale = true;
          say(saved.dataset.changed, true);
        } else if (answer.ok) {
          form.elements.version.value = (await answer.json()).version;
          say(saved.dataset.saved, false);
        } else {
          say(saved.dataset.failed, true);
        }
      } catch {
        say(saved.dataset.failed, true);
      } finally {
        isSaving = false;
      }
    });
    return saving;
  };

  const previewSoon = () => {
    clearTimeout(typing);
    typing = setTimeout(preview, waitAfterTyping);
  };
  form.addEventListener("input", previewSoon);
  form.addEventListener("focusin", (event) => {
    if (lookAt(event.target.name ?? "")) previewSoon();
  });
  place.addEventListener("change", (event) => {
    if (event.target !== stretch()) return;
    lookedAt = event.target.value;
    preview();
  });
  withScript(place);
  form.addEventListener("change", () => {
    clearTimeout(typing);
    preview();
    save();
  });
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) save();
  });
  form.addEventListener("submit", (event) => {
    const question = event.submitter?.dataset.confirm;
    if (question && !window.confirm(question)) {
      event.preventDefault();
      return;
    }
    // A save on its way counts up the version that this form sends: wait for it.
    if (isSaving) {
      event.preventDefault();
      saving.then(() => {
        if (event.submitter) event.submitter.removeAttribute("data-confirm");
        form.requestSubmit(event.submitter);
      });
    }
  });

  const target = location.hash.length > 1 ? document.getElementById(decodeURIComponent(location.hash.slice(1))) : null;
  if (target && form.contains(target)) target.focus();
})();

// Keys for hands in gloves. Each pad fills the text field that it names; the field can still be typed into, and without this script the
// pad stays away. A pad comes when its field is tapped, or is there from the start.
(() => {
  "use strict";
  const fraction = /\s*\d+\/\d+"?$/;

  // What a text is after a key: feet and inches as they are written, one fraction at most.
  function after(text, key) {
    if (key === "delete") return fraction.test(text) ? text.replace(fraction, "") : text.trimEnd().slice(0, -1);
    if (key === "'") return /\d$/.test(text) && !/['/]/.test(text) ? `${text}' ` : text;
    if (key === '"') return /\d$/.test(text) ? `${text}"` : text;
    if (key.includes("/")) {
      const whole = text.replace(fraction, "").replace(/"$/, "").trimEnd();
      return `${whole}${whole && " "}${key}"`;
    }
    return text.endsWith('"') ? text : text + key;
  }

  for (const pad of document.querySelectorAll("[data-pad-for]")) {
    const field = document.getElementById(pad.dataset.padFor);
    const show = () => { pad.hidden = false; };
    // The keyboard of the screen would cover the pad: it comes where it is asked for.
    field.inputMode = "none";
    if ("open" in pad.dataset) show();
    else field.addEventListener("focus", show);
    pad.addEventListener("click", event => {
      const key = event.target.closest("button")?.dataset.key;
      if (!key) return;
      if (key === "keyboard") {
        field.inputMode = field.type === "password" ? "numeric" : "text";
        field.blur();
        field.focus();
        return;
      }
      if (key !== "delete" && field.maxLength > 0 && field.value.length >= field.maxLength) return;
      field.value = after(field.value, key);
      field.dispatchEvent(new Event("input", { bubbles: true }));
    });
  }
})();

// What a measured span comes to where there is no network. The shop has worked it out for every span and put it into the page's
// tables; here it is looked up and put into the page's sentences. Lengths are whole sixteenths of an inch.
"use strict";
const spans = (() => {
  const form = document.querySelector("form[data-outbox=measure]");
  const advice = document.getElementById("advice");
  if (!form) return undefined;
  const says = advice.dataset;
  const fields = [...form.querySelectorAll("input[name=span]")];
  const numbers = text => text.split(" ").map(Number);
  const columnStep = 32;
  // Each row but the first says what it has more than the one before.
  function rowsOf(text) {
    const rows = [];
    for (const more of text === "" ? [] : text.split(";").map(numbers)) rows.push(rows.length === 0 ? more : more.map((number, i) => rows.at(-1)[i] + number));
    return rows;
  }
  const tables = [...document.querySelectorAll("data[id^=table-]")].map(({ dataset }) => ({
    first: Number(dataset.first), overs: numbers(dataset.overs), sags: numbers(dataset.sags), arcs: rowsOf(dataset.arcs), sound: numbers(dataset.sound),
  }));
  const fill = (sentence, ...values) => sentence.replace(/\{(\d)\}/g, (_, place) => values[place]);
  const millimetresIn = { mm: 1, cm: 10, m: 1000 };
  let isFilled = false;

  // A length as typed, up to the next sixteenth; undefined where it is written in another way, which the shop may know.
  function read(text) {
    const plain = text.trim().toLowerCase().replace(/[’′]/g, "'").replace(/[”″]|''/g, "\"").replace(/[\s\u00a0]+/g, " ");
    const isBare = !/['"a-z]/.test(plain);
    const metric = (isBare && form.dataset.unit === "mm" ? `${plain} mm` : plain).match(/^(\d+(?:\.\d+)?) ?(mm|cm|m)$/);
    if (metric) return Math.ceil(Number(metric[1]) * millimetresIn[metric[2]] / 1.5875 - 1e-6);
    const feet = plain.match(/^(\d+) ?(?:'|ft) ?/);
    const rest = plain.slice(feet ? feet[0].length : 0).replace(/ ?(?:"|in)$/, "");
    const inches = rest.match(/^(\d+(?:\.\d+)?)?(?:(?:^| |-)(\d+)\/(2|4|8|16|32|64))?$/);
    if (!inches || (rest === "" && !feet) || (isBare && form.dataset.unit === "mm")) return undefined;
    const [, whole = 0, above = 0, below = 1] = inches;
    return Math.ceil((feet ? feet[1] * 192 : 0) + whole * 16 + above * 16 / below - 1e-6);
  }

  function feetAndInches(length) {
    const [feet, inches, part] = [Math.floor(length / 192), Math.floor(length % 192 / 16), length % 16];
    const step = part & -part;
    const fraction = part ? `${part / step}/${16 / step}` : "";
    const small = [inches || feet || !part ? inches : "", fraction].filter(text => text !== "").join(" ");
    return `${feet ? `${feet}' ` : ""}${small}"`;
  }

  function millimetres(length) {
    const exact = length * 15875;
    const tenths = Math.floor((exact + 500) / 1000);
    return `${tenths * 1000 === exact ? "" : "≈ "}${tenths / 10} mm`;
  }

  // Both units as the pages write them: no line breaks within one.
  function both(length) {
    const [us, metric] = [feetAndInches(length), millimetres(length)].map(text => text.replaceAll(" ", "\u00a0"));
    return form.dataset.unit === "mm" ? `${metric} (${us})` : `${us} (${metric})`;
  }

  function look(field) {
    const text = field.value.trim();
    const span = text === "" ? undefined : read(text);
    if (text === "" || (span !== undefined && String(span) === field.dataset.planned)) return { field };
    if (tables.length === 0) return { field, problem: form.dataset.none };
    if (span === undefined) return { field, problem: fill(form.dataset.unread, text) };
    const table = tables[field.dataset.table];
    const place = span - table.first;
    if (!(place in table.overs)) return { field, problem: fill(form.dataset.far, text) };
    return { field, over: table.overs[place], sag: table.sags[place], place, isSound: place >= table.sound[0] && place <= table.sound[1] };
  }

  function lines(place, ...texts) {
    place.replaceChildren(...texts.map((text, i) => {
      const line = document.createElement("p");
      if (i === 0 && texts.length > 1) line.className = "sag";
      line.textContent = text;
      return line;
    }));
  }

  function sayOf({ field, problem, over, sag }) {
    const said = document.getElementById(`${field.id}-said`);
    field.setAttribute("aria-invalid", String(problem !== undefined));
    said.hidden = problem === undefined && over === undefined;
    said.classList.toggle("bad", problem !== undefined || sag < 0);
    if (problem !== undefined) lines(said, problem);
    else if (sag < 0) lines(said, says.notReached, fill(says.straight, both(-sag), both(Math.abs(over))));
    else if (over !== undefined) lines(said, fill(says.sagNow, both(sag)), `${field.dataset.sag} · ${fill(over < 0 ? says.shortFor : says.overFor, both(Math.abs(over)))}`);
  }

  // The rope of all sections at a sag: as planned, or between the two columns of the span.
  function ropeAt(row, found) {
    return found.reduce((sum, { field, place }) => {
      const [planned, ...columns] = tables[field.dataset.table].arcs[row];
      if (place === undefined) return sum + columnStep * planned;
      const [column, part] = [Math.floor(place / columnStep), place % columnStep];
      return sum + columnStep * columns[column] + (part && part * (columns[column + 1] - columns[column]));
    }, 0);
  }

  // The deepest sag that all sections can have with the rope there is; undefined where there is none.
  function sharedBy(found) {
    const rope = columnStep * Number(says.rope);
    let [below, above] = [0, tables[0].arcs.length - 1];
    if (above < 1 || ropeAt(below, found) > rope || ropeAt(above, found) <= rope) return undefined;
    while (above - below > 1) {
      const middle = (below + above) >> 1;
      if (ropeAt(middle, found) <= rope) below = middle;
      else above = middle;
    }
    return Number(says.least) + below;
  }

  function waysOf(found, measured, over) {
    if (measured.every(one => one.over === 0)) return [];
    const shared = sharedBy(found);
    return [
      measured.every(one => one.isSound) && fill(says.sag, measured.map(one => `${one.field.dataset.name}: ${both(one.sag)}`).join("; ")),
      shared !== undefined && fill(says.share, both(shared)),
      over < 0 && -over <= Number(says.knots) && fill(says.knot, both(-over)),
      over > 0 && fill(says.trim, both(over)),
      over < 0 && says.back,
    ].filter(way => way);
  }

  // Shows what comes of what is typed; false where that cannot be told here.
  function answer() {
    const found = fields.map(look);
    found.forEach(sayOf);
    const measured = found.filter(one => one.over !== undefined);
    const isKnown = found.every(one => one.problem === undefined);
    advice.hidden = !isKnown || measured.length === 0;
    if (advice.hidden) return isKnown;
    const over = measured.reduce((sum, one) => sum + one.over, 0);
    const total = advice.querySelector(".total");
    total.textContent = over < 0 ? fill(says.short, both(-over)) : over > 0 ? fill(says.over, both(over)) : says.fits;
    total.classList.toggle("bad", over < 0);
    total.classList.toggle("good", over >= 0);
    const ways = waysOf(found, measured, over);
    advice.querySelector("h2").hidden = ways.length === 0;
    advice.querySelector("ol").replaceChildren(...ways.map(way => {
      const item = document.createElement("li");
      const line = document.createElement("p");
      line.textContent = way;
      item.append(line);
      return item;
    }));
    const report = advice.querySelector("form");
    report.hidden = over >= 0;
    report.querySelector("button").classList.toggle("main", ways.length === 1);
    report.querySelectorAll("input[name=span]").forEach((input, i) => { input.value = fields[i].value; });
    return true;
  }

  // What was measured here and is not sent yet stands in the fields.
  function show(tap) {
    if (isFilled) return;
    isFilled = true;
    tap.fields.filter(([name]) => name === "span").forEach(([, value], i) => { if (fields[i]) fields[i].value = value; });
    answer();
  }

  return { answer, show };
})();

// Comfort only: every page works without it. Says where a form stands, and keeps a second press from sending it again.
"use strict";

function say(words) {
  const standing = document.getElementById("standing");
  if (!standing) return;
  standing.hidden = false;
  standing.textContent = words;
}

function watch() {
  for (const form of document.querySelectorAll("form[data-once]")) once(form);
  follow();
}

function once(form) {
  form.addEventListener("submit", (event) => {
    if (form.dataset.sent) {
      event.preventDefault();
      return;
    }
    form.dataset.sent = "yes";
    say(navigator.onLine === false ? "Written on this tablet; the bench cannot be reached." : "Sent, not in the ledger yet.");
  });
  // Coming back by the browser's own button: the form may be sent again, it still counts once.
  window.addEventListener("pageshow", () => { delete form.dataset.sent; });
}

// A refused form: the list of mistakes is read first.
document.getElementById("mistakes")?.focus();

// This tablet: the outline follows the width chosen.
const card = document.querySelector("select[data-card]");
card?.addEventListener("input", () => {
  for (const path of document.querySelectorAll(".card-outline [data-width]"))
    path.setAttribute("class", path.dataset.width === card.value ? "card-now" : "card-other");
});

// A running series: the figure follows the device, and each run taken is drawn by the server.
let source;

function follow() {
  const live = document.querySelector("[data-live]");
  if (!live || source) return;
  source = new EventSource(live.dataset.live);
  let known = null;
  source.addEventListener("figure", (event) => {
    const [figure, beside] = JSON.parse(event.data);
    const shown = document.querySelector("[data-figure]"), words = document.querySelector("[data-beside]");
    if (shown && figure) shown.textContent = figure;
    if (words) words.textContent = beside;
  });
  source.addEventListener("taken", async (event) => {
    if (known !== null && known !== event.data) {
      await redraw();
      say(`Run ${event.data} taken and in the ledger.`);
    }
    known = event.data;
  });
  source.addEventListener("over", async (event) => {
    source.close();
    source = undefined;
    await redraw();
    if (event.data) say(event.data);
  });
}

// Puts the server's newest drawing of this page in place of what is shown.
async function redraw() {
  const answer = await fetch(location.pathname, { headers: { accept: "text/html" } });
  if (!answer.ok) return;
  const drawn = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const part of ["main", ".drawing", ".title-block"]) {
    const now = document.querySelector(part), next = drawn.querySelector(part);
    if (now && next) now.replaceChildren(...next.childNodes);
  }
  watch();
}

watch();

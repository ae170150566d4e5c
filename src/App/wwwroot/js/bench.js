// Comfort only: every page works without it. Says where a form stands, and keeps a second press from sending it again.
"use strict";

const standing = document.getElementById("standing");

function say(words) {
  if (!standing) return;
  standing.hidden = false;
  standing.textContent = words;
}

for (const form of document.querySelectorAll("form[data-once]")) {
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

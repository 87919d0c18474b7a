// Makes the pages quicker to use. Everything works without it.
"use strict";

// A form is sent once, however often an impatient finger presses.
document.addEventListener("submit", (event) => {
  const form = event.target;
  if (form.dataset.sent) {
    event.preventDefault();
    return;
  }
  if (form.method === "post") form.dataset.sent = "yes";
});
window.addEventListener("pageshow", () => {
  for (const form of document.forms) delete form.dataset.sent;
});

// A browser writes a date as its own country does: the day stands in words beside it.
for (const field of document.querySelectorAll("input[type=date]")) {
  const said = document.createElement("span");
  said.className = "day-said";
  said.setAttribute("aria-live", "polite");
  const how = { weekday: "short", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" };
  const tell = () => {
    const day = field.valueAsDate;
    said.textContent = day ? day.toLocaleDateString(document.documentElement.lang, how) : "";
  };
  field.after(said);
  field.addEventListener("input", tell);
  tell();
}

// A choice shows its page at once.
for (const list of document.querySelectorAll("[data-go]")) {
  let byKey = false;  // an arrow key passes over choices that are not meant
  list.addEventListener("keydown", (event) => {
    if (event.key === "Enter" && byKey) list.form.requestSubmit();
    byKey = list.tagName === "SELECT" && event.key !== "Enter" && event.key !== "Tab";
  });
  list.addEventListener("pointerdown", () => { byKey = false; });
  list.addEventListener("change", () => {
    if (!byKey) list.form.requestSubmit();
    for (const each of list.form.querySelectorAll(".needs-no-script")) {
      each.classList.remove("needs-no-script");
    }
  });
}

// Words left in a text.
for (const box of document.querySelectorAll("textarea[data-left]")) {
  const place = document.getElementById(box.dataset.left);
  const show = () => { place.textContent = (box.maxLength - box.value.length).toLocaleString(document.documentElement.lang); };
  box.addEventListener("input", show);
  show();
}

// A box that has nothing to scroll is no stop for the keyboard.
const boxes = document.querySelectorAll(".wide[tabindex]");
const stops = () => {
  for (const box of boxes) box.tabIndex = box.scrollWidth > box.clientWidth ? 0 : -1;
};
window.addEventListener("resize", stops);
stops();

for (const button of document.querySelectorAll("[data-print]")) {
  button.hidden = false;
  button.addEventListener("click", () => window.print());
}

// What changes comes in by itself; a page in the background waits, and so does a part that
// somebody is at work in: a box ticked, words written.
for (const part of document.querySelectorAll("[data-renew]")) {
  const busy = () => part.contains(document.activeElement) || part.querySelector("input:checked")
    || [...part.querySelectorAll("textarea, input:not([type=checkbox])")].some((box) => box.value !== box.defaultValue);
  const renew = async () => {
    if (document.hidden || busy()) return;
    try {
      const answer = await fetch(part.dataset.renew, { redirect: "error" });
      if (!answer.ok || busy()) return;
      const open = [...part.querySelectorAll("details[id]")].map((each) => [each.id, each.open]);
      part.innerHTML = await answer.text();
      for (const [id, was] of open) {
        const each = document.getElementById(id);
        if (each) each.open = was;
      }
      furnish(part);
    } catch { /* the line is down: the next round tries again */ }
  };
  setInterval(renew, 1000 * (part.dataset.every || 5));
}

// How much waits, on the menu of a page that stays open.
const badges = document.querySelectorAll("[data-count]");
if (badges.length) setInterval(async () => {
  if (document.hidden) return;
  try {
    const answer = await fetch("/morning/counts", { redirect: "error" });
    if (!answer.ok) return;
    const counts = await answer.json();
    for (const badge of badges) {
      const count = counts[badge.dataset.count];
      badge.hidden = !count;
      badge.firstElementChild.textContent = count.toLocaleString(document.documentElement.lang);
      badge.lastElementChild.textContent = ` (${count})`;
    }
  } catch { /* the line is down */ }
}, 60000);

// Lines are ticked one by one or all of a group; what can be done with them comes into sight.
const list = document.getElementById("list");
const bar = list && list.querySelector(".deed-bar");
const ticked = () => {
  if (!bar) return;
  const count = list.querySelectorAll("input[name=line]:checked").length;
  bar.classList.toggle("some", count > 0);
  bar.querySelector("[data-ticked]").textContent = count ? count.toLocaleString(document.documentElement.lang) : "";
};
const furnish = (where) => {
  for (const button of where.querySelectorAll("[data-tick]")) {
    button.hidden = false;
    button.addEventListener("click", () => {
      const boxes = [...button.closest("details, section").querySelectorAll("input[type=checkbox]")];
      const all = boxes.every((box) => box.checked);
      for (const box of boxes) box.checked = !all;
      ticked();
    });
  }
};
furnish(document);
if (list) {
  // Enter in the field of a cry closes that one: the form's own first button is another's.
  list.addEventListener("keydown", (event) => {
    const place = event.key === "Enter" && event.target.closest(".closing");
    if (!place) return;
    event.preventDefault();
    place.querySelector("button").click();
  });
  list.addEventListener("change", ticked);
  window.addEventListener("pageshow", ticked);
}

// A password can be looked at while it is typed.
for (const label of document.querySelectorAll("[data-reveal]")) {
  label.hidden = false;
  const boxes = label.closest("form").querySelectorAll("input[type=password]");
  label.addEventListener("change", (event) => {
    for (const box of boxes) box.type = event.target.checked ? "text" : "password";
  });
}

// What was just done can be undone for a minute.
for (const line of document.querySelectorAll("[data-gone]")) {
  setTimeout(() => line.querySelector("button").remove(), 1000 * line.dataset.gone);
}

// What own words take is shown while they are written.
for (const box of document.querySelectorAll("textarea[data-cost]")) {
  let soon = 0;
  box.addEventListener("input", () => {
    clearTimeout(soon);
    soon = setTimeout(async () => {
      try {
        const answer = await fetch(box.dataset.cost, { method: "POST", body: new FormData(box.form) });
        if (answer.ok) document.getElementById("cost").innerHTML = await answer.text();
      } catch { /* the line is down: it is shown on the way out */ }
    }, 600);
  });
}

// The round: the page is kept on the phone, and notes until there is a line. They are kept by
// officer, and sent from any page.
const NOTES = "round-notes";
const notes = () => JSON.parse(localStorage.getItem(NOTES) || "[]");
const keepNotes = (all) => localStorage.setItem(NOTES, JSON.stringify(all));
const round = document.getElementById("round");
const officerId = document.body.dataset.officer;

const showNotes = () => {
  if (!round) return;
  const waiting = notes().filter((note) => note.officer === officerId);
  const line = round.querySelector("[data-notes-wait]");
  line.hidden = !waiting.length;
  line.querySelector("strong").textContent = waiting.length.toLocaleString(document.documentElement.lang);
  for (const note of waiting) {
    const form = [...round.querySelectorAll("form[data-note]")].find((each) => each.elements.line.value === note.fields.line);
    if (form) tellNote(form, "waits");
  }
};
const tellNote = (form, what, words) => {
  const place = form.closest(".stop");
  for (const each of ["waits", "sent", "wrong"]) place.querySelector(`[data-${each}]`).hidden = each !== what;
  if (words) place.querySelector("[data-wrong]").textContent = words;
  form.hidden = what !== "wrong";
};
const sendNotes = async () => {
  for (const note of notes().filter((each) => each.officer === officerId)) {
    const token = document.querySelector("input[name=csrf_token]");
    try {
      const answer = await fetch("/round/notes", {
        method: "POST", redirect: "error", headers: { Accept: "application/json" },
        body: new URLSearchParams({ ...note.fields, csrf_token: token ? token.value : note.fields.csrf_token }),
      });
      if (!answer.ok) return;
      const said = await answer.json();
      keepNotes(notes().filter((each) => each.fields.key !== note.fields.key));
      const form = round && [...round.querySelectorAll("form[data-note]")].find((each) => each.elements.line.value === note.fields.line);
      if (form) tellNote(form, said.wrong ? "wrong" : "sent", said.wrong);
    } catch { return; /* no line, or the sign-in has ended: they stay on this phone */ }
  }
  showNotes();
};
if (round) {
  const noLine = round.querySelector("[data-no-line]");
  const look = async () => {  // the phone often thinks that there is a line
    try {
      await fetch("/health", { cache: "no-store", signal: AbortSignal.timeout(8000) });
      noLine.hidden = true;
      await sendNotes();
    } catch { noLine.hidden = false; }
  };
  for (const event of ["online", "offline", "focus"]) window.addEventListener(event, look);
  setInterval(look, 30000);
  look();
  for (const form of round.querySelectorAll("form[data-note]")) {
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      event.stopPropagation();
      keepNotes([...notes(), { officer: officerId, fields: Object.fromEntries(new FormData(form)) }]);
      tellNote(form, "waits");
      sendNotes().then(showNotes);
    });
  }
  if ("serviceWorker" in navigator) {
    navigator.serviceWorker.register(round.dataset.worker, { scope: "/round" });
    navigator.serviceWorker.ready.then(async () => {
      const cache = await caches.open("round");
      const drawn = [...document.querySelectorAll("link[rel=stylesheet], script[src]")].map((each) => each.href || each.src);
      await cache.addAll([location.href, ...drawn]);
      round.dataset.kept = "yes";
    }).catch(() => { /* the line went while it was kept: the next visit keeps it */ });
  }
}
showNotes();
if (officerId) sendNotes(); else if ("caches" in window) caches.delete("round");  // signed out: no names stay

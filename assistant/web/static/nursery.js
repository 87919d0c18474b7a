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
const bar = list && list.querySelector(".bar");
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
      const boxes = [...button.closest("details").querySelectorAll("input[name=line]")];
      const all = boxes.every((box) => box.checked);
      for (const box of boxes) box.checked = !all;
      ticked();
    });
  }
};
if (list) {
  furnish(list);
  list.addEventListener("change", ticked);
  window.addEventListener("pageshow", ticked);
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

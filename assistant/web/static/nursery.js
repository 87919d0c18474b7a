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

// While a warning stands its answers come in by themselves; a page in the background waits.
for (const part of document.querySelectorAll("[data-renew]")) {
  const renew = async () => {
    if (document.hidden || part.contains(document.activeElement)) return;
    try {
      const answer = await fetch(part.dataset.renew, { redirect: "error" });
      if (answer.ok) part.innerHTML = await answer.text();
    } catch { /* the line is down: the next round tries again */ }
  };
  setInterval(renew, 5000);
}

"use strict";
// The clock of a valley that is shown: what it says, and the ways to move it on.

const LOOK_MS = 1500;
const local = document.querySelector("#local");
const complaint = document.querySelector("#clock-complaint");
const buttons = [...document.querySelectorAll("[data-push]")];

function shows(clock) {
  local.textContent = clock.busy ? `${clock.local}, and time passes …` : clock.local;
  buttons.forEach((button) => { button.disabled = clock.busy; });
  aheadMs = new Date(clock.at) - Date.now();
}

async function look(fields) {
  try {
    shows(await ask("/clock", fields));
    complaint.hidden = true;
  } catch (error) {
    complaint.textContent = error instanceof TypeError ? "The valley does not answer." : error.message;
    complaint.hidden = false;
  }
}

buttons.forEach((button) => {
  button.addEventListener("click", () => look({ push: button.dataset.push }));
});
look();
setInterval(look, LOOK_MS);

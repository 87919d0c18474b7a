"use strict";
// The phones of the page. Each talks to the operator that served it; one question for news
// serves them all, since a browser opens only a few connections to one host.

const WAIT_SECONDS = 25;
const RETRY_MS = 2000;
const timeZone = document.body.dataset.zone; // none: the watcher's own
let aheadMs = 0; // of the watcher's clock, where the operator's is moved on

function now() {
  return new Date(Date.now() + aheadMs);
}

async function ask(path, fields) {
  const answer = await fetch(path, fields && {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(fields),
  });
  const found = await answer.json();
  if (!answer.ok) throw new Error(found.error || `The operator answered ${answer.status}.`);
  return found;
}

class Phone {
  constructor(article) {
    this.article = article;
    this.number = article.dataset.phone;
    this.compose = this.find(".compose textarea");
    this.reply = this.find(".reply input");
    this.dialled = this.find(".dial input");
    this.ussd = this.find(".ussd");
    this.field = this.compose;
    this.session = null; // the screen that is shown, from the first to the last
    this.unread = 0; // texts that came while a screen hid them
    this.listen();
    this.count();
  }

  find(selector) {
    return this.article.querySelector(selector);
  }

  listen() {
    const on = (selector, event, act) => this.find(selector).addEventListener(event, act);
    on(".left", "click", () => this.left());
    on(".right", "click", () => this.right());
    on(".power", "click", () => this.power());
    on(".dial", "submit", (event) => { event.preventDefault(); this.dial(); });
    on(".reply", "submit", (event) => { event.preventDefault(); this.left(); });
    on(".compose", "submit", (event) => event.preventDefault());
    on(".keys", "mousedown", (event) => event.preventDefault()); // the field keeps the focus
    on(".keys", "click", (event) => {
      if (event.target.dataset.key) this.press(event.target.dataset.key);
    });
    this.compose.addEventListener("input", () => this.count());
    this.compose.addEventListener("keydown", (event) => {
      if (event.key === "Enter" && !event.shiftKey && !event.isComposing) {
        event.preventDefault();
        this.left();
      }
    });
    for (const field of [this.compose, this.reply, this.dialled]) {
      field.addEventListener("focus", () => { this.field = field; });
    }
  }

  // The keys.

  press(key) {
    if (this.session && !this.session.screen.more) return;
    const field = this.session ? this.reply : this.field;
    const start = field.selectionStart ?? field.value.length;
    const end = field.selectionEnd ?? start;
    field.setRangeText(key, start, end, "end");
    if (matchMedia("(pointer: fine)").matches) field.focus({ preventScroll: true });
    this.count();
  }

  left() {
    if (!this.session) return this.send();
    if (this.session.screen.more) return this.answer();
    return this.close();
  }

  right() {
    if (!this.session) {
      this.field.value = "";
      this.count();
    } else if (this.session.screen.more) {
      this.hangUp();
    }
  }

  // Texts.

  async send() {
    const text = this.compose.value;
    if (text.trim() === "") return this.complain("Write a text first.");
    const sent = await this.doing("texts", { text });
    if (sent && this.compose.value === text) {
      this.compose.value = "";
      this.count();
    }
  }

  show(message) {
    const item = document.createElement("li");
    const from = message.sender || "sent";
    item.className = message.sender ? "received" : "sent";
    item.append(
      line("meta", `${moment(message.at)} ${from} · ${saySegments(message.segments)}`),
      line("text", message.text),
    );
    const list = this.find(".texts");
    list.append(item);
    list.scrollTop = list.scrollHeight;
    if (this.session && message.sender) {
      this.unread += 1;
      this.label();
    }
  }

  clear() {
    this.find(".texts").replaceChildren();
  }

  count() {
    this.find(".count").textContent = sayCount(this.compose.value);
  }

  // Sessions.

  async dial() {
    if (this.session?.screen.more) return;
    this.showScreen(await this.doing("dial", { code: this.dialled.value }));
  }

  async answer() {
    const text = this.reply.value;
    this.reply.value = "";
    this.showScreen((await this.doing("keys", { text })) || (await this.now()));
  }

  async hangUp() {
    if (await this.doing("hang-up", {})) this.close();
  }

  async now() {
    return ask(this.path("screen")).catch(() => null);
  }

  showScreen(found) {
    if (!found || !found.screen) return;
    const { screen } = found;
    const live = found.in_session && screen.more;
    this.session = { screen: { ...screen, more: live }, ends: found.ends && new Date(found.ends) };
    const unit = screen.encoding === "GSM-7" ? "septets" : "UCS-2 characters";
    this.find(".shown").textContent = screen.text;
    this.find(".size").textContent = `(${screen.size} of ${screen.limit} ${unit})`;
    this.find(".reply").hidden = !live;
    this.find(".ended").textContent = live ? "" : `Session ended: ${found.ended}.`;
    this.ussd.hidden = false;
    this.label();
    if (live) this.reply.focus({ preventScroll: true });
    else this.find(".left").focus({ preventScroll: true });
  }

  close() {
    this.session = null;
    this.unread = 0;
    this.ussd.hidden = true;
    this.label();
    this.compose.focus({ preventScroll: true });
  }

  label() {
    const more = this.session?.screen.more;
    this.find(".left").textContent = !this.session ? "Send" : more ? "Answer" : "Close";
    this.find(".right").textContent = more ? "Hang up" : "Erase";
    this.find(".right").disabled = Boolean(this.session && !more);
    const news = this.unread === 1 ? "1 new text" : `${this.unread} new texts`;
    this.find(".state").textContent = !this.session ? "Texts" : this.unread ? news : "Session";
    this.tick(now());
    this.find(".dial button").disabled = Boolean(more);
    this.compose.disabled = Boolean(this.session);
  }

  // What the page tells it.

  async tick(now) {
    const ends = this.session?.screen.more && this.session.ends;
    this.find(".now").textContent = ends ? left(ends - now) : clock(now);
    if (ends && now > ends && !this.asking) {
      this.asking = true;
      this.showScreen(await this.now());
      this.asking = false;
    }
  }

  async update(state) {
    const power = this.find(".power");
    power.setAttribute("aria-checked", String(state.on));
    power.textContent = state.on ? "On" : "Off";
    this.article.classList.toggle("off", !state.on);
    const shown = Boolean(this.session?.screen.more);
    if (state.in_session !== shown) this.showScreen(await this.now());
  }

  async power() {
    const on = this.find(".power").getAttribute("aria-checked") !== "true";
    const state = await this.doing("power", { on });
    if (state) this.update(state);
  }

  // The line to the operator.

  path(last) {
    return `/phones/${encodeURIComponent(this.number)}/${last}`;
  }

  async doing(last, fields) {
    this.complain("");
    try {
      return await ask(this.path(last), fields);
    } catch (error) {
      this.complain(error instanceof TypeError ? "The operator does not answer." : error.message);
      return null;
    }
  }

  complain(text) {
    const place = this.find(".complaint");
    place.textContent = text;
    place.hidden = text === "";
  }
}

function line(name, text) {
  const part = document.createElement("p");
  part.className = name;
  part.textContent = text;
  return part;
}

function clock(date) {
  return date.toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit", timeZone });
}

function moment(at) {
  const date = new Date(at);
  const day = (each) =>
    each.toLocaleDateString("en-GB", { weekday: "short", day: "numeric", month: "short", timeZone });
  return day(date) === day(now()) ? clock(date) : `${day(date)} ${clock(date)}`;
}

function left(ms) {
  const seconds = Math.max(Math.round(ms / 1000), 0);
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")} left`;
}

async function follow(phones) {
  const which = phones.map((phone) => `phone=${encodeURIComponent(phone.number)}`).join("&");
  const byNumber = new Map(phones.map((phone) => [phone.number, phone]));
  let operator = null, after = 0, wait = 0;
  while (phones.length) {
    try {
      const news = await ask(`/news?${which}&after=${after}&wait=${wait}`);
      document.querySelector("#lost").hidden = true;
      if (operator !== null && news.operator !== operator) { // it was started anew, and empty
        phones.forEach((phone) => phone.clear());
        operator = null;
        after = wait = 0;
        continue;
      }
      operator = news.operator;
      for (const message of news.messages) {
        byNumber.get(message.phone).show(message);
        after = message.turn;
      }
      await Promise.all(news.phones.map((state) => byNumber.get(state.phone).update(state)));
      wait = WAIT_SECONDS;
    } catch (error) {
      document.querySelector("#lost").hidden = false;
      wait = 0;
      await new Promise((resolve) => setTimeout(resolve, RETRY_MS));
    }
  }
}

function listenToDigits(phones) {
  let current = phones[0];
  document.addEventListener("focusin", (event) => {
    const article = event.target.closest(".phone");
    current = phones.find((phone) => phone.article === article) || current;
  });
  document.addEventListener("keydown", (event) => {
    const typing = event.target.matches("input, textarea");
    if (!typing && !event.ctrlKey && !event.metaKey && !event.altKey && /^[0-9*#]$/.test(event.key)) {
      event.preventDefault(); // press() moves the focus to a field, which would take it too
      current?.press(event.key);
    }
  });
}

const phones = [...document.querySelectorAll(".phone")].map((article) => new Phone(article));
const tick = () => phones.forEach((phone) => phone.tick(now()));
tick();
setInterval(tick, 1000);
listenToDigits(phones);
follow(phones);

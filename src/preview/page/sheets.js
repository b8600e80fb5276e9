// The handouts: which is chosen, and its pages, of which only those are drawn again that look
// different.

const STORE = "puddlebook-place";

export class Sheets {
  #sheet;
  #choice;
  #chosen_another;
  #version = null;
  #beside = null;
  #word;
  // Where each handout was left: page and offset.
  #places = new Map();

  constructor(sheet, choice, chosen_another) {
    this.#sheet = sheet;
    this.#choice = choice;
    this.#chosen_another = chosen_another;
    const kept = read_kept();
    this.#word = kept?.word ?? null;
    if (kept) this.#places.set(kept.word, kept.place);
    addEventListener("pagehide", () => this.#keep());
  }

  // The handout in view.
  handout() {
    return this.#version?.handouts.find((handout) => handout.word === this.#word) ?? null;
  }

  // Shows a version; says which handouts look different from the version beside it, and where.
  show(version, { beside }) {
    const is_first = this.#version === null;
    this.#version = version;
    if (!version) return [];
    this.#beside = beside ?? null;
    if (!this.handout()) this.#word = version.handouts[0].word;
    this.#show_choice();
    this.#show_pages();
    if (is_first) this.back_to(this.#places.get(this.#word));
    return version.handouts.flatMap((handout) => {
      const pages = this.#redrawn(handout);
      return pages.length ? [{ name: handout.name, pages }] : [];
    });
  }

  // Does something that may move the pages; the page in view stays where it is.
  hold(work) {
    const place = this.place();
    const made = work();
    this.back_to(place);
    return made;
  }

  // The page in view, and how far its top is from the top of the window.
  place() {
    const figures = [...this.#sheet.children];
    const seen = figures.find((figure) => figure.getBoundingClientRect().bottom > innerHeight * 0.15);
    if (!seen || scrollY === 0) return null;
    const page = figures.indexOf(seen);
    return { page, look: seen.dataset.look, top: seen.getBoundingClientRect().top };
  }

  // Scrolls so that a page is where it was: the page that looks the same, or else the same number.
  back_to(place) {
    if (!place) return;
    const figures = [...this.#sheet.children];
    const near = figures[Math.min(place.page, figures.length - 1)];
    const same = figures.find((figure) => figure.dataset.look === place.look);
    const figure = near?.dataset.look === place.look ? near : (same ?? near);
    if (figure) scrollBy({ top: figure.getBoundingClientRect().top - place.top, behavior: "instant" });
  }

  // Numbers of the pages that differ from the version beside, from 1.
  #redrawn(handout) {
    const before = this.#beside?.handouts.find((other) => other.word === handout.word);
    if (!before) return [];
    const known = new Set(before.pages);
    return handout.pages.flatMap((look, at) => (known.has(look) ? [] : [at + 1]));
  }

  #choose(word) {
    this.#places.set(this.#word, this.place());
    this.#word = word;
    this.#show_pages();
    const place = this.#places.get(word);
    if (place) this.back_to(place);
    else if (scrollY > this.#top()) scrollTo({ top: this.#top(), behavior: "instant" });
    this.#chosen_another();
    this.#keep();
  }

  #top() {
    return Math.max(0, this.#sheet.getBoundingClientRect().top + scrollY - 64);
  }

  #keep() {
    try {
      sessionStorage.setItem(STORE, JSON.stringify({ word: this.#word, place: this.place() }));
    } catch {
      // A browser may forbid it; then a page that is loaded again begins at the top.
    }
  }

  #show_choice() {
    const words = this.#version.handouts.map((handout) => handout.word).join();
    if (this.#choice.dataset.words !== words) {
      this.#choice.dataset.words = words;
      this.#choice.replaceChildren(...this.#version.handouts.map((handout) => this.#choice_of(handout)));
    }
    for (const handout of this.#version.handouts) {
      const label = this.#choice.querySelector(`[data-word="${handout.word}"]`);
      const [name, count] = label.querySelectorAll("span");
      name.textContent = handout.name;
      name.lang = this.#version.language;
      const [pages, redrawn] = [handout.pages.length, this.#redrawn(handout).length];
      count.textContent = redrawn ? `${redrawn} of ${pages} redrawn` : pages === 1 ? "1 page" : `${pages} pages`;
      count.classList.toggle("changed", redrawn > 0);
    }
  }

  #choice_of(handout) {
    const label = document.createElement("label");
    label.dataset.word = handout.word;
    const radio = document.createElement("input");
    radio.type = "radio";
    radio.name = "handout";
    radio.value = handout.word;
    radio.checked = handout.word === this.#word;
    radio.addEventListener("change", () => this.#choose(handout.word));
    const name = document.createElement("span");
    const count = document.createElement("span");
    count.className = "count";
    label.append(radio, name, count);
    return label;
  }

  #show_pages() {
    const handout = this.handout();
    const redrawn = new Set(this.#redrawn(handout));
    const figures = [...this.#sheet.children];
    const is_other = this.#sheet.dataset.word !== handout.word;
    this.#sheet.dataset.word = handout.word;
    figures.slice(handout.pages.length).forEach((figure) => figure.remove());
    handout.pages.forEach((look, at) => {
      const figure = figures[at] ?? this.#sheet.appendChild(blank());
      const count = handout.pages.length;
      figure.classList.toggle("redrawn", redrawn.has(at + 1));
      const [caption] = figure.getElementsByTagName("figcaption");
      caption.textContent = `${at + 1} of ${count}${redrawn.has(at + 1) ? ", redrawn" : ""}`;
      const alt = `${handout.name}, page ${at + 1} of ${count}`;
      draw(figure, look, { alt, width: handout.width, height: handout.height, lang: this.#version.language, is_other });
    });
  }
}

function blank() {
  const figure = document.createElement("figure");
  figure.append(document.createElement("img"), document.createElement("figcaption"));
  return figure;
}

// Puts a picture on a page, unless it is there. The old one stays until the new one is ready.
function draw(figure, look, { alt, width, height, lang, is_other }) {
  const [old] = figure.getElementsByTagName("img");
  old.alt = alt;
  old.lang = lang;
  if (figure.dataset.look === look) return;
  const in_view = is_near(figure);
  const had = Boolean(figure.dataset.look) && !is_other;
  figure.dataset.look = look;
  const picture = new Image(width, height);
  picture.alt = alt;
  picture.lang = lang;
  picture.decoding = "async";
  if (!in_view || !had) picture.loading = "lazy";
  picture.src = `/picture/${look}`;
  if (!in_view || !had) {
    old.replaceWith(picture);
    return;
  }
  const ready = () => {
    // Meanwhile there may have been another.
    if (figure.dataset.look !== look) return;
    figure.querySelector("img").replaceWith(picture);
    figure.classList.add("fresh");
    setTimeout(() => figure.classList.remove("fresh"), 600);
  };
  picture.decode().then(ready, ready);
}

function is_near(figure) {
  const { top, bottom } = figure.getBoundingClientRect();
  return bottom > -innerHeight && top < 2 * innerHeight;
}

function read_kept() {
  try {
    return JSON.parse(sessionStorage.getItem(STORE));
  } catch {
    return null;
  }
}

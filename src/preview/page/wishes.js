// What if there were more students, or the paint were thinner: fields whose values go into no
// file until the button is pressed.

const at = (id) => document.getElementById(id);
// So long nobody minds waiting, in milliseconds.
const SOON = 600;
// A slider moves through many values; the one that it rests on is tried.
const REST = 150;

export class Wishes {
  #page;
  #students = null;
  #mixes = new Map();
  #timer = 0;
  #asking = false;
  #unwritable = null;

  constructor(page) {
    this.#page = page;
    const number = at("students");
    const slide = at("students-slide");
    number.addEventListener("input", () => number.validity.valid && this.#wish_students(number.valueAsNumber));
    slide.addEventListener("input", () => this.#wish_students(slide.valueAsNumber));
    at("reset").addEventListener("click", () => {
      this.#forget();
      this.#page.say("Back to what the file says.");
      at("students").focus();
    });
    // Enter in a field is no wish to write: the button alone touches the file.
    at("wish").addEventListener("submit", (event) => event.preventDefault());
    at("write").addEventListener("click", () => this.#write());
  }

  // The lesson is another now: wishes that it meets are gone, the others are tried on it.
  follow() {
    const fields = this.#page.base()?.fields;
    at("try").hidden = !fields;
    if (!fields) return;
    if (this.#students === fields.students) this.#students = null;
    for (const [key, mix] of this.#mixes) {
      const field = fields.mixes.find((field) => key_of(field) === key);
      if (!field || field.mix === mix || !fields.known_mixes.includes(mix)) this.#mixes.delete(key);
    }
    this.#show_fields();
    this.#say("");
    if (this.#is_any()) this.#try();
    else this.#show_order(null);
  }

  // The change in a few words.
  words() {
    const words = [];
    if (this.#students !== null) words.push(this.#students === 1 ? "1 student" : `${this.#students} students`);
    for (const { canvas, layer, mix } of this.#wished_mixes()) words.push(layer ? `${mix} ${layer} on ${canvas}` : `${mix} on ${canvas}`);
    return words.join(", ");
  }

  #is_any() {
    return this.#students !== null || this.#mixes.size > 0;
  }

  #wished_mixes() {
    const fields = this.#page.base()?.fields.mixes ?? [];
    return fields.flatMap((field) => {
      const mix = this.#mixes.get(key_of(field));
      return mix === undefined ? [] : [{ ...field, mix }];
    });
  }

  #wish_students(count) {
    this.#students = count === this.#page.base()?.fields.students ? null : count;
    this.#wished();
  }

  #wished() {
    this.#show_fields();
    clearTimeout(this.#timer);
    if (this.#is_any()) this.#timer = setTimeout(() => this.#try(), REST);
    else this.#forget();
  }

  #forget() {
    clearTimeout(this.#timer);
    this.#students = null;
    this.#mixes.clear();
    this.#unwritable = null;
    this.#say("");
    this.#show_fields();
    this.#show_nothing();
  }

  // The file alone.
  #show_nothing() {
    this.#page.hold(() => {
      this.#show_order(null);
      this.#page.show(null);
    });
  }

  // One question at a time; what was wished meanwhile is asked next.
  async #try() {
    if (this.#asking) return;
    this.#asking = true;
    let asked;
    do {
      asked = this.#body();
      const slow = setTimeout(() => this.#page.say("Working it out …"), SOON);
      try {
        const tried = await this.#page.ask("/try", JSON.parse(asked));
        if (asked !== this.#body()) continue;
        this.#unwritable = tried.unwritable;
        this.#say("");
        this.#page.hold(() => {
          this.#show_order(tried.order, tried.shown.language);
          this.#page.show(tried.shown, tried.order.sums);
        });
        this.#page.say(`With your change: ${this.words()}. The file is as it was.`);
      } catch (refusal) {
        // Another version is on its way here, and will be asked about.
        if (refusal.status === 410) break;
        if (asked !== this.#body()) continue;
        this.#say(refusal.message || "That could not be tried.");
        this.#show_nothing();
      } finally {
        clearTimeout(slow);
      }
    } while (this.#is_any() && asked !== this.#body());
    this.#asking = false;
    this.#show_fields();
  }

  #body() {
    const wish = { students: this.#students, mixes: this.#wished_mixes() };
    return JSON.stringify({ version: this.#page.base()?.version, wish });
  }

  async #write() {
    if (!this.#is_any() || at("write").disabled) return;
    at("write").disabled = true;
    const words = this.words();
    try {
      await this.#page.ask("/write", JSON.parse(this.#body()));
      this.#page.say(`Written into the file: ${words}.`);
      at("students").focus();
    } catch (refusal) {
      this.#say(refusal.status === 410 ? "The lesson changed meanwhile; look at the pages, then try again." : refusal.message);
      this.#show_fields();
    }
  }

  #say(text) {
    if (at("wish-said").textContent !== text) at("wish-said").textContent = text;
  }

  #show_fields() {
    const fields = this.#page.base()?.fields;
    if (!fields) return;
    const count = this.#students ?? fields.students;
    const [number, slide] = [at("students"), at("students-slide")];
    slide.max = Math.max(40, fields.students, count);
    if (number.valueAsNumber !== count) number.value = count;
    if (slide.valueAsNumber !== count) slide.value = count;
    mark(number, this.#students !== null);
    at("students-was").textContent = this.#students === null ? (fields.named ? "known by name in the file" : "") : `${fields.students} in the file`;
    this.#show_mixes(fields);
    at("reset").disabled = !this.#is_any();
    const hindrance = this.#is_any() ? (this.#unwritable ?? (this.#page.is_faulty() ? "The file is wrong at the moment; mend it first." : "")) : "";
    at("write").disabled = !this.#is_any() || hindrance !== "";
    at("write-hint").textContent = hindrance;
  }

  #show_mixes(fields) {
    const shape = JSON.stringify([fields.mixes.map(key_of), fields.known_mixes]);
    if (at("mixes").dataset.shape !== shape) {
      at("mixes").dataset.shape = shape;
      at("mixes").replaceChildren(...fields.mixes.map((field, index) => this.#mix_field(field, index, fields.known_mixes)));
    }
    fields.mixes.forEach((field, index) => {
      const select = at(`mix-${index}`);
      const wished = this.#mixes.get(key_of(field));
      if (select.value !== (wished ?? field.mix)) select.value = wished ?? field.mix;
      mark(select, wished !== undefined);
      at(`mix-${index}-was`).textContent = wished === undefined ? "" : `${field.mix} in the file`;
    });
  }

  #mix_field(field, index, known) {
    const box = document.createElement("div");
    box.className = "field";
    const head = element("div", "", "head");
    const label = element("label", `Consistency of ${field.canvas}${field.layer ? `, layer ${field.layer}` : ""}`);
    label.htmlFor = `mix-${index}`;
    const select = document.createElement("select");
    select.id = `mix-${index}`;
    select.setAttribute("aria-describedby", `mix-${index}-was`);
    select.append(...known.map((mix) => new Option(mix)));
    select.addEventListener("change", () => {
      const own = this.#page.base().fields.mixes[index];
      if (select.value === own.mix) this.#mixes.delete(key_of(own));
      else this.#mixes.set(key_of(own), select.value);
      this.#wished();
    });
    const was = element("span", "", "was");
    was.id = `mix-${index}-was`;
    head.append(label, " ", was);
    box.append(head, select);
    return box;
  }

  #show_order(order, language) {
    at("order").hidden = !order;
    if (!order) return;
    at("sums").replaceChildren(...order.sums.map(sum_of));
    at("lines").replaceChildren(...order.changed.map((row) => row_of(row, language)));
    at("items").hidden = order.changed.length === 0;
    const same = order.same === 1 ? "1 stays as it is" : `${order.same} stay as they are`;
    const changed = order.changed.length === 1 ? "1 item changes" : `${order.changed.length} items change`;
    at("changed").textContent = order.changed.length ? `${changed}, ${same}` : "No item of the order changes";
  }
}

const key_of = ({ canvas, layer }) => JSON.stringify([canvas, layer]);

function mark(control, is_wished) {
  control.closest(".field").classList.toggle("wished", is_wished);
}

// A sum with the change, and what it was.
function sum_of({ what, before, after }) {
  const box = document.createElement("div");
  const name = element("dt", what);
  const value = element("dd", after);
  value.append(element("span", before === after ? "as before" : `instead of ${before}`, "before"));
  box.append(name, value);
  return box;
}

// An item before and with the change, column by column.
function row_of({ item, before, after }, language) {
  const line = document.createElement("tr");
  const name = element("th", item);
  name.scope = "row";
  name.lang = language;
  const none = (side, key) => side[key] || (key === "packs" ? "none" : "–");
  line.append(name, ...["needed", "packs", "cost"].map((key) => {
    const cell = document.createElement("td");
    const [was, is] = [none(before, key), none(after, key)];
    if (was === is) cell.textContent = is;
    else cell.append(element("span", was, "before"), " → ", element("span", is, "after"));
    return cell;
  }));
  return line;
}

// An element of this kind with a text, and how it looks.
export function element(kind, text, look = "") {
  const made = document.createElement(kind);
  made.textContent = text;
  made.className = look;
  return made;
}

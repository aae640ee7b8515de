// Looks at calculation sheets as a reader does: on a phone, at the width of A4, in light and in dark.
// node look.mjs SHEET.html ...; exit code 1 where something is wrong. SHOTS=folder keeps pictures and prints.
import { chromium } from "playwright-core";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";

const WIDTHS = [360, 794];
const LEAST_CONTRAST = 4.5;
const faults = [];

/** In the page: what is wrong with it at this width and in these colours. */
function inspect(leastContrast) {
  const wrong = [];
  const page = document.documentElement;
  if (page.scrollWidth > page.clientWidth) {
    const wide = [...document.querySelectorAll("body *")].filter((e) => e.getBoundingClientRect().right > page.clientWidth + 0.5);
    wrong.push(`${page.scrollWidth} px wide: ${wide.slice(0, 3).map((e) => `${e.tagName} ${e.className?.baseVal ?? e.className}`).join(", ")}`);
  }
  let level = 0;
  for (const heading of document.querySelectorAll("h1, h2, h3, h4, h5, h6")) {
    const own = Number(heading.tagName[1]);
    if (own > level + 1) wrong.push(`heading "${heading.textContent}" skips from ${level} to ${own}`);
    level = own;
  }
  if (document.querySelectorAll("h1").length !== 1) wrong.push("not one h1");
  for (const svg of document.querySelectorAll("svg")) {
    const named = svg.getAttribute("aria-labelledby")?.split(" ").map((id) => document.getElementById(id)?.textContent ?? "").join("") ?? "";
    const name = (svg.getAttribute("aria-label") ?? named).trim();
    if (svg.getAttribute("role") !== "img" || !name || !svg.querySelector("title")) wrong.push("a drawing without a name");
  }
  for (const table of document.querySelectorAll("table")) {
    if (!table.caption?.textContent.trim()) wrong.push("a table without a caption");
    if ([...table.querySelectorAll("th")].some((th) => !th.scope)) wrong.push("a table head without scope");
  }
  if (!page.lang) wrong.push("no language");
  const known = new Set();
  for (const { id } of document.querySelectorAll("[id]")) {
    if (known.has(id)) wrong.push(`two elements are called ${id}`);
    known.add(id);
  }
  for (const link of document.querySelectorAll("a[href]")) {
    const to = link.getAttribute("href");
    if (!to.startsWith("#") || !known.has(to.slice(1))) wrong.push(`a link to ${to}`);
  }

  const rgba = (text) => {
    const parts = text.match(/[\d.]+/g)?.map(Number) ?? [0, 0, 0, 0];
    return [parts[0], parts[1], parts[2], parts[3] ?? 1];
  };
  const light = ([r, g, b]) => {
    const [lr, lg, lb] = [r, g, b].map((c) => (c / 255 <= 0.04045 ? c / 255 / 12.92 : ((c / 255 + 0.055) / 1.055) ** 2.4));
    return 0.2126 * lr + 0.7152 * lg + 0.0722 * lb;
  };
  const contrast = (a, b) => {
    const [high, low] = [light(a), light(b)].sort((x, y) => y - x);
    return (high + 0.05) / (low + 0.05);
  };
  const over = ([r, g, b, a], [R, G, B]) => [r * a + R * (1 - a), g * a + G * (1 - a), b * a + B * (1 - a), 1];
  const behind = (element) => {
    const layers = [];
    for (let e = element; e; e = e.parentElement) layers.push(rgba(getComputedStyle(e).backgroundColor));
    const canvas = matchMedia("(prefers-color-scheme: dark)").matches ? [18, 18, 18, 1] : [255, 255, 255, 1];
    return layers.reverse().reduce((below, layer) => over(layer, below), canvas);
  };
  // Whatever is filled below a text in a drawing; a text with a halo stands on its halo.
  const filledBelow = (text) => {
    const style = getComputedStyle(text);
    const page = behind(text.ownerSVGElement.parentElement);
    if (style.stroke !== "none" && style.paintOrder.startsWith("stroke")) return over(rgba(style.stroke), page);
    const box = text.getBoundingClientRect();
    const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
    let colour = page;
    for (const shape of text.ownerSVGElement.querySelectorAll("rect, path, circle")) {
      const own = getComputedStyle(shape);
      if (own.fill === "none") continue;
      const r = shape.getBoundingClientRect();
      if (x < r.left || x > r.right || y < r.top || y > r.bottom) continue;
      const [red, green, blue, alpha] = rgba(own.fill);
      colour = over([red, green, blue, alpha * Number(own.fillOpacity)], colour);
    }
    return colour;
  };
  const seen = new Set();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    if (!node.textContent.trim()) continue;
    const element = node.parentElement;
    if (["STYLE", "TITLE", "DESC", "title", "desc"].includes(element.tagName)) continue;
    const style = getComputedStyle(element);
    const drawn = element.ownerSVGElement;
    const ground = drawn ? filledBelow(element) : behind(element);
    const colour = over(rgba(drawn ? style.fill : style.color), ground);
    const value = contrast(colour, ground);
    const what = `${element.tagName.toLowerCase()}.${element.className.baseVal ?? element.className}`;
    if (value < leastContrast && !seen.has(what)) {
      seen.add(what);
      wrong.push(`contrast ${value.toFixed(2)} of ${what}: "${node.textContent.trim().slice(0, 40)}"`);
    }
  }
  return wrong;
}

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
});
const shots = process.env.SHOTS;
for (const file of process.argv.slice(2)) {
  for (const colorScheme of ["light", "dark"]) {
    for (const width of WIDTHS) {
      const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme });
      const say = (what) => faults.push(`${basename(file)}, ${width} px, ${colorScheme}: ${what}`);
      page.on("console", (message) => say(`console: ${message.text()}`));
      page.on("pageerror", (error) => say(`error: ${error.message}`));
      page.on("request", (request) => request.url().startsWith("file:") || say(`asks for ${request.url()}`));
      await page.goto(pathToFileURL(file).href);
      (await page.evaluate(inspect, LEAST_CONTRAST)).forEach(say);
      if (shots) await page.screenshot({ path: join(shots, `${basename(file, ".html")}-${width}-${colorScheme}.png`), fullPage: true });
      await page.close();
    }
  }
  if (shots) {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(file).href);
    for (const format of ["A4", "Letter"]) {
      await page.pdf({ path: join(shots, `${basename(file, ".html")}-${format}.pdf`), format, printBackground: false, preferCSSPageSize: false });
    }
    await page.close();
  }
}
await browser.close();
faults.forEach((fault) => console.error(fault));
console.log(`${process.argv.length - 2} sheets looked at: ${faults.length} faults`);
process.exit(faults.length ? 1 : 0);

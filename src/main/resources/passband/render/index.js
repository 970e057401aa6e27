// The rows that have every word that is looked for, whatever its letters and accents.
(() => {
  const find = document.getElementById("find");
  const found = document.getElementById("found");
  const bare = (text) => text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const rows = [...document.querySelectorAll("tbody tr")].map((row) => ({ row, text: bare(row.textContent) }));
  find.addEventListener("input", () => {
    const words = bare(find.value).split(/\s+/);
    rows.forEach(({ row, text }) => (row.hidden = !words.every((word) => text.includes(word))));
    const n = rows.filter(({ row }) => !row.hidden).length;
    found.textContent = n + (n === 1 ? " sheet" : " sheets");
  });
  document.querySelector(".search").hidden = false;
})();

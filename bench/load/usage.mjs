/** How much CPU and memory has this process taken? Loaded before a server, so that it can be asked from outside. */
process.on("message", (/** @type {any} */ message) => {
  if (message?.what !== "usage") return;
  const { user, system } = process.cpuUsage();
  process.send?.({ what: "usage", cpuSeconds: (user + system) / 1e6, rssMb: process.memoryUsage().rss / 1e6 });
});
// Being asked must not keep the server from ending.
process.channel?.unref();

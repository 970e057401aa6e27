// The peer in a configuration language: the limits of 60 points as tables.py works them out, in doubles and so not
// exact. With --ext-code count=N for N procedures.
local uncertainty(amps) =
  2 * std.sqrt((std.pow(amps / 200 + 0.001, 2) + std.pow(0.0005, 2) + std.pow(amps / 400, 2)) / 3);

local row(mode, setting, load, percent, least) =
  local tolerance = std.max(setting * percent / 100, least);
  local nominal = std.sqrt(setting / load);
  local low = std.sqrt((setting - tolerance) / load);
  local high = std.sqrt((setting + tolerance) / load);
  {
    mode: mode,
    setting: setting,
    load: load,
    low: std.ceil(low * 1000),
    high: std.floor(high * 1000),
    uncertainty: std.max(uncertainty(low), uncertainty(high)),
    ratio: std.min((nominal - low) / uncertainty(low), (high - nominal) / uncertainty(high)),
  };

[
  [
    row(['slit', 'score', 'sear', 'mist'][m], 20 + 15 * i + (n % 20) / 2, 350 + 100 * m, 12 + (n + m) % 9, 1 + (n + 3 * m) % 4)
    for m in std.range(0, 3)
    for i in std.range(0, 14)
  ]
  for n in std.range(0, std.extVar('count') - 1)
]

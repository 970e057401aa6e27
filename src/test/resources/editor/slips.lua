-- A beginner's slips in a real editor: each is written, the fix that stands first is taken until nothing is said any more.
local command = vim.split(vim.env.PASSBAND_SERVER, "\n")
local result = io.open(vim.env.PASSBAND_RESULT, "w")

local function tell(...)
  result:write(table.concat({ ... }, "\t"):gsub("\n", "\\n") .. "\n")
  result:flush()
end

local function ask(method, params)
  for _, reply in pairs(vim.lsp.buf_request_sync(0, method, params, 20000) or {}) do
    return reply.result
  end
end

local function faults()
  return vim.diagnostic.get(0)
end

local function write(text)
  vim.api.nvim_buf_set_lines(0, 0, -1, false, vim.split(text, "\n"))
  assert(vim.wait(20000, function() return #faults() > 0 end), "no fault was shown")
end

-- A fix may change several places, and the server may speak in between: what counts is where it comes to rest.
local function mend()
  local fault = faults()[1]
  vim.api.nvim_win_set_cursor(0, { fault.lnum + 1, fault.col })
  local params = vim.lsp.util.make_range_params()
  params.range.start = { line = fault.lnum, character = fault.col }
  params.range["end"] = params.range.start
  params.context = { diagnostics = {} }
  local actions = ask("textDocument/codeAction", params) or {}
  if actions[1] == nil then
    return fault.message
  end
  vim.lsp.util.apply_workspace_edit(actions[1].edit, "utf-16")
  vim.wait(5000, function() return #faults() == 0 end)
  return actions[1].title
end

local ok, trouble = pcall(function()
  local slips = vim.fn.json_decode(vim.fn.readfile(vim.env.PASSBAND_SLIPS))
  local root = vim.env.PASSBAND_ROOT
  vim.cmd("edit " .. vim.fn.fnameescape(vim.env.PASSBAND_FILE))
  local client = vim.lsp.start_client({
    name = "passband",
    cmd = command,
    root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = "procedures" } },
  })
  vim.lsp.buf_attach_client(0, client)
  assert(vim.wait(20000, function()
    return vim.lsp.buf_get_clients(0)[client] and vim.lsp.buf_get_clients(0)[client].initialized
  end), "the server did not start")
  for number, slip in ipairs(slips) do
    write(slip)
    local titles = {}
    for _ = 1, 4 do
      if #faults() == 0 then
        break
      end
      titles[#titles + 1] = mend()
    end
    tell(tostring(number), tostring(#titles), tostring(#faults()), table.concat(titles, "; "))
  end
end)
tell("end", tostring(ok), tostring(trouble))
result:close()
vim.cmd("qall!")

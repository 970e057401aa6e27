-- What an author does in a real editor: faults, hover, fix, rename and layout, each told in one line of the result file.
local command = vim.split(vim.env.PASSBAND_SERVER, "\n")
local result = io.open(vim.env.PASSBAND_RESULT, "w")

local function tell(...)
  result:write(table.concat({ ... }, "\t"):gsub("\n", "\\n") .. "\n")
  result:flush()
end

local function find(text)
  for number, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
    local column = line:find(text, 1, true)
    if column then
      return number, column - 1
    end
  end
  error("there is no " .. text)
end

local function go(text, on)
  local line, column = find(text)
  vim.api.nvim_win_set_cursor(0, { line, column + (on or 0) })
end

local function ask(method, params)
  local replies = vim.lsp.buf_request_sync(0, method, params, 20000)
  for _, reply in pairs(replies or {}) do
    return reply.result, reply.error
  end
end

local function shown()
  return vim.diagnostic.get(0)
end

local ok, trouble = pcall(function()
  vim.cmd("edit " .. vim.fn.fnameescape(vim.env.PASSBAND_FILE))
  local root = vim.env.PASSBAND_ROOT
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

  go("thin  | 20", 1)
  tell("hover", ask("textDocument/hover", vim.lsp.util.make_position_params()).contents.value)

  local line = find("setup  monopolar-load")
  local was = vim.api.nvim_buf_get_lines(0, line - 1, line, false)[1]
  vim.api.nvim_buf_set_lines(0, line - 1, line, false, { (was:gsub("load", "lod")) })
  assert(vim.wait(20000, function() return #shown() > 0 end), "no fault was shown")
  local fault = shown()[1]
  tell("fault", tostring(fault.lnum + 1), fault.code, fault.message)

  vim.api.nvim_win_set_cursor(0, { fault.lnum + 1, fault.col + 1 })
  local params = vim.lsp.util.make_range_params()
  params.context = { diagnostics = {} }
  local actions = ask("textDocument/codeAction", params)
  tell("fix", actions[1].title)
  vim.lsp.util.apply_workspace_edit(actions[1].edit, "utf-16")
  assert(vim.wait(20000, function() return #shown() == 0 end), "the fault stays")
  tell("mended", vim.api.nvim_buf_get_lines(0, line - 1, line, false)[1])

  go("tack | 1", 1)
  params = vim.lsp.util.make_position_params()
  local where = ask("textDocument/definition", params)
  tell("definition", vim.fn.fnamemodify(vim.uri_to_fname(where[1].uri), ":t"), tostring(where[1].range.start.line + 1))
  params.newName = "seal"
  vim.lsp.util.apply_workspace_edit(ask("textDocument/rename", params), "utf-16")
  vim.cmd("wall")
  go("seal | 1", 1)
  tell("renamed", tostring(#shown()))

  go("thick | 5, 30, 60", 0)
  local row = vim.api.nvim_win_get_cursor(0)[1]
  vim.api.nvim_buf_set_lines(0, row - 1, row, false, { "      thick|5, 30, 60|125|" })
  local edits = ask("textDocument/formatting", vim.lsp.util.make_formatting_params({}))
  vim.lsp.util.apply_text_edits(edits, 0, "utf-16")
  tell("laid out", vim.api.nvim_buf_get_lines(0, row - 1, row, false)[1])
end)
tell("end", tostring(ok), tostring(trouble))
result:close()
vim.cmd("qall!")

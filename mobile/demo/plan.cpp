#include "mobile/demo/plan.h"

#include <algorithm>

#include "core/base/result.h"
#include "core/base/text.h"

namespace kneerail::demo {

namespace {

constexpr int sleeve_every_bays = 4;
constexpr std::int64_t rail_spacing_mm = 450;

std::vector<std::string> cells_of(std::string_view line) {
  std::vector<std::string> cells;
  std::size_t from = 0;
  while (true) {
    const std::size_t comma = line.find(',', from);
    cells.emplace_back(line.substr(from, comma - from));
    if (comma == std::string_view::npos) return cells;
    from = comma + 1;
  }
}

template <class Row>
int place_of(const std::vector<Row>& rows, std::string_view code) {
  const auto found =
      std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.code == code; });
  check(found != rows.end(), "a table of Skerrymouth names something that is not there");
  return static_cast<int>(found - rows.begin());
}

/// Lays out one run after the other; `plan` is what stands so far.
class Layout {
 public:
  explicit Layout(Plan& plan) : plan_(plan) {}

  void run(int place) {
    PlannedRun& run = plan_.runs[static_cast<std::size_t>(place)];
    run_ = place;
    rails_ = run.row.whole("rails");
    spacing_mm_ = run.row.whole("spacing_mm");
    height_mm_ = run.row.whole("height_mm");
    run.first_post = static_cast<int>(plan_.posts.size());
    run.first_bay = static_cast<int>(plan_.bays.size());
    for (int n = 0; n < run.posts; ++n) post(n);
  }

 private:
  void post(int n) {
    const PlannedRun& run = plan_.runs[static_cast<std::size_t>(run_)];
    PlannedPost post;
    post.run = run_;
    post.number = ++numbers_[static_cast<std::size_t>(run.site)];
    post.chainage_mm = n * spacing_mm_;
    post.first_part = static_cast<int>(plan_.parts.size());
    post_ = static_cast<int>(plan_.posts.size());
    plan_.posts.push_back(post);
    const bool last = n + 1 == run.posts;
    if (run.finish == "paint") {
      welded_post(last);
    } else {
      slip_on_post(n == 0 || last);
    }
    if (!last) bay(n);
    plan_.posts.back().parts = static_cast<int>(plan_.parts.size()) - post.first_part;
  }

  void slip_on_post(bool end) {
    add("post tube", "tube", 0, height_mm_ / 2, 2);
    add("base fixing", "anchor", 0, 0, 1);
    add("fitting", "flange", 0, 40, 1);
    add("fitting", end ? "corner" : "tee", 0, height_mm_, 2);
    for (std::int64_t rail = 1; rail < rails_; ++rail) {
      add("fitting", "cross", 0, height_mm_ - rail * rail_spacing_mm, 2);
    }
    if (end) add("fitting", "cap", 60, height_mm_, 1);
  }

  void welded_post(bool last) {
    if (!last) section_ = add("welded section", "section", spacing_mm_ / 2, height_mm_ / 2, 1);
    add("post tube", "post_painted", 0, height_mm_ / 2, 1);
    add("base fixing", "anchor_painted", 0, 0, 1);
    in_section(add("weld", "weld", 0, height_mm_, 1));
    in_section(add("weld", "weld", 0, height_mm_ - rail_spacing_mm, 1));
    in_section(add("cut edge", "section", 0, 20, 1));
  }

  void bay(int n) {
    const PlannedRun& run = plan_.runs[static_cast<std::size_t>(run_)];
    PlannedBay bay;
    bay.run = run_;
    bay.from = post_;
    bay.gate = run.code == "LI-D" && (n == 8 || n == 16);
    bay_ = static_cast<int>(plan_.bays.size());
    plan_.bays.push_back(bay);
    if (bay.gate) {
      add("gate", "gate", spacing_mm_ / 2, height_mm_ / 2, 1);
    } else if (run.finish != "paint") {
      add("top rail", "tube", spacing_mm_ / 2, height_mm_, 2);
      for (std::int64_t rail = 1; rail < rails_; ++rail) {
        add("mid-rail", "tube", spacing_mm_ / 2, height_mm_ - rail * rail_spacing_mm, 2);
      }
      if (n % sleeve_every_bays == 1) {
        add("fitting", "sleeve", spacing_mm_ / 3, height_mm_, 1);
        add("fitting", "sleeve", spacing_mm_ / 3, height_mm_ - rail_spacing_mm, 1);
      }
      if (run.row.whole("toe_board") == 1) add("toe board", "toe", spacing_mm_ / 2, 75, 1);
    }
    bay_ = -1;
  }

  int add(std::string_view role, std::string type, std::int64_t along, std::int64_t up, int spots) {
    if (plan_.runs[static_cast<std::size_t>(run_)].finish == "aluminium") type = "al_" + type;
    PlannedPart part;
    part.run = run_;
    part.post = post_;
    part.bay = bay_;
    part.role = role;
    part.type = plan_.type(type);
    part.along_mm = along;
    part.up_mm = std::max<std::int64_t>(up, 0);
    part.screws = static_cast<int>(
        plan_.types[static_cast<std::size_t>(part.type)].row.number("screws").value_or(0));
    part.spots = spots;
    plan_.parts.push_back(part);
    return static_cast<int>(plan_.parts.size()) - 1;
  }

  void in_section(int part) { plan_.parts[static_cast<std::size_t>(part)].whole = section_; }

  Plan& plan_;
  std::vector<int> numbers_ = std::vector<int>(16, 0);
  int run_ = 0;
  int post_ = 0;
  int bay_ = -1;
  int section_ = -1;
  std::int64_t rails_ = 2;
  std::int64_t spacing_mm_ = 0;
  std::int64_t height_mm_ = 0;
};

}  // namespace

const std::string& TableRow::text(std::string_view column) const {
  static const std::string none;
  const auto found = cells_.find(column);
  return found == cells_.end() ? none : found->second;
}

std::optional<std::int64_t> TableRow::number(std::string_view column) const {
  return int_from_text(text(column));
}

std::int64_t TableRow::whole(std::string_view column) const {
  const auto value = number(column);
  check(value.has_value(), "a table of Skerrymouth lacks a number");
  return *value;
}

double TableRow::real(std::string_view column) const {
  const auto value = double_from_text(text(column));
  check(value.has_value(), "a table of Skerrymouth lacks a number");
  return *value;
}

std::vector<TableRow> table_rows(std::string_view table) {
  std::string_view text = table_text(table);
  std::vector<std::string> header;
  std::vector<TableRow> rows;
  while (!text.empty()) {
    const std::size_t end = text.find('\n');
    const std::string_view line = text.substr(0, end);
    text = end == std::string_view::npos ? std::string_view{} : text.substr(end + 1);
    if (line.empty()) continue;
    std::vector<std::string> cells = cells_of(line);
    if (header.empty()) {
      header = std::move(cells);
      continue;
    }
    check(cells.size() == header.size(), "a row of a table of Skerrymouth has other cells");
    std::map<std::string, std::string, std::less<>> row;
    for (std::size_t i = 0; i < cells.size(); ++i) row.emplace(header[i], std::move(cells[i]));
    rows.emplace_back(std::move(row));
  }
  return rows;
}

int Plan::run(std::string_view code) const {
  return place_of(runs, code);
}
int Plan::type(std::string_view code) const {
  return place_of(types, code);
}
int Plan::site(std::string_view code) const {
  return place_of(sites, code);
}

int Plan::post(std::string_view site_code, int number) const {
  const int wanted = site(site_code);
  for (std::size_t i = 0; i < posts.size(); ++i) {
    if (posts[i].number == number && runs[static_cast<std::size_t>(posts[i].run)].site == wanted) {
      return static_cast<int>(i);
    }
  }
  check(false, "Skerrymouth has no such post");
  return 0;
}

int Plan::part_at(int post, std::string_view role, int nth) const {
  const PlannedPost& at = posts[static_cast<std::size_t>(post)];
  for (int i = at.first_part; i < at.first_part + at.parts; ++i) {
    if (parts[static_cast<std::size_t>(i)].role == role && nth-- == 0) return i;
  }
  check(false, "a post of Skerrymouth has no such part");
  return 0;
}

bool Plan::is_zinc(const PlannedPart& part) const {
  return types[static_cast<std::size_t>(part.type)].row.text("protection") == "hot-dip zinc";
}

Plan skerrymouth_plan() {
  Plan plan;
  for (TableRow& row : table_rows("sites")) {
    plan.sites.push_back({row, row.text("code"), row.text("name"), {}});
  }
  for (TableRow& row : table_rows("zones")) {
    plan.zones.push_back({row, row.text("code"), plan.site(row.text("site")), {}});
  }
  for (TableRow& row : table_rows("types")) plan.types.push_back({row, row.text("code"), {}});
  for (TableRow& row : table_rows("runs")) {
    PlannedRun run;
    run.row = row;
    run.code = row.text("code");
    run.site = plan.site(row.text("site"));
    run.zone = place_of(plan.zones, row.text("zone"));
    run.posts = static_cast<int>(row.whole("posts"));
    const auto in_service = date_from_text(row.text("in_service"));
    check(in_service.has_value(), "a run of Skerrymouth has no date in service");
    run.in_service = *in_service;
    run.seasonal = row.whole("seasonal") == 1;
    run.finish = row.text("finish");
    plan.runs.push_back(std::move(run));
  }
  Layout layout(plan);
  for (int run = 0; run < static_cast<int>(plan.runs.size()); ++run) layout.run(run);
  return plan;
}

}  // namespace kneerail::demo

#include "tests/benchmark/small_register.h"

#include "core/records/coating_reading.h"
#include "core/records/entities.h"

namespace kneerail::benchmark {

namespace {

constexpr int components = 100;

/// Kind 1, a create: its type, what it is part of, its fields.
Entry created(const Uuid& feed, const Uuid& id, EntityType type, const Uuid& parent,
              cbor::Map fields) {
  Entry entry{feed, 1, {}, {}, {}, id};
  entry.body.set(1, static_cast<int>(type));
  if (!parent.is_zero()) entry.body.set(2, parent);
  entry.body.set(3, std::move(fields));
  return entry;
}

}  // namespace

Result<SmallRegister> SmallRegister::make(const std::filesystem::path& folder) {
  SmallRegister made;
  auto opened = Register::open({.folder = folder, .mode = Mode::create});
  if (!opened) return fail(opened.error());
  made.register_ = std::move(*opened);
  auto& store = *made.register_;
  const Uuid organisation = store.mint();
  made.person_ = store.mint();
  made.gauge_ = store.mint();
  made.site_ = store.mint();
  made.visit_ = store.mint();
  const Uuid zone = store.mint();
  const Uuid run = store.mint();
  std::vector<Entry> entries{
      created(organisation, organisation, EntityType::organisation, {}, {{1, "Benchmark"}}),
      created(organisation, made.person_, EntityType::person, organisation, {{2, "BM"}}),
      created(organisation, made.gauge_, EntityType::instrument, organisation,
              {{1, 1}, {2, "G-1"}}),
      created(organisation, made.site_, EntityType::site, organisation, {{1, "Quay"}}),
      created(made.site_, zone, EntityType::zone, made.site_, {{1, "Sea side"}, {2, 4}}),
      created(made.site_, run, EntityType::run, zone, {{1, "Slip"}})};
  for (int i = 0; i < components; ++i) {
    const Uuid post = store.mint();
    made.components_.push_back(store.mint());
    entries.push_back(created(made.site_, post, EntityType::post, run,
                              {{1, std::to_string(i + 1)}, {2, 2'000 * i}}));
    entries.push_back(created(made.site_, made.components_.back(), EntityType::component, post,
                              {{1, 5}, {4, 2}}));
  }
  entries.push_back({made.site_, 10, made.site_, made.person_, {{1, 1}}, made.visit_});
  if (auto saved = store.save(entries); !saved) return fail(saved.error());
  return made;
}

Entry SmallRegister::next_reading() {
  const std::int64_t number = made_++;
  const Uuid& component = components_[static_cast<std::size_t>(number % components)];
  const std::int64_t thickness_tenth_um = 600 + number * 7 % 300;
  return {site_,
          CoatingReading::kind,
          component,
          person_,
          {{1, visit_},
           {2, gauge_},
           {3, cbor::Array{thickness_tenth_um, thickness_tenth_um + 12, thickness_tenth_um - 7}},
           {4, 1 + number / components % 4}},
          {}};
}

}  // namespace kneerail::benchmark

#include "mobile/models/store_link.h"

#include <utility>

#include "schema/store/organisation_days.h"

using kneerail::Done;
using kneerail::Draft;
using kneerail::Entry;
using kneerail::Fault;
using kneerail::Mode;
using kneerail::Register;
using kneerail::Result;

Result<std::unique_ptr<StoreLink>> StoreLink::open(const Register::Options& options) {
  std::unique_ptr<StoreLink> link(new StoreLink);
  Register::Options asked = options;
  asked.mode = Mode::write;
  auto writing = Register::open(asked);
  if (writing && (*writing)->opening().writable) {
    link->opening_ = (*writing)->opening();
    link->writer_ = std::make_unique<kneerail::Writer>(std::move(*writing));
  } else if (writing) {
    for (const std::string& note : (*writing)->opening().notes) link->why_read_only_ += note + " ";
    link->opening_ = (*writing)->opening();
  } else {
    link->why_read_only_ = writing.error().message;
  }
  asked.mode = Mode::read;
  auto reading = Register::open(asked);
  if (!reading) return kneerail::fail(writing ? reading.error() : writing.error());
  link->reader_ = std::move(*reading);
  const auto days = kneerail::organisation_days(link->reader_->tables());
  if (days && !days->trouble.empty()) link->opening_.notes.push_back(days->trouble);
  return link;
}

void StoreLink::save(std::vector<Entry> entries, std::optional<Draft> ended, Told told) {
  ask(
      [entries = std::move(entries), ended = std::move(ended)](Register& store) -> Result<> {
        auto saved = ended ? store.save(entries, *ended) : store.save(entries);
        if (!saved) return kneerail::fail(saved.error());
        return Done{};
      },
      std::move(told));
}

void StoreLink::save_draft(Draft draft, Told told) {
  ask([draft = std::move(draft)](Register& store) { return store.save_draft(draft); },
      std::move(told));
}

void StoreLink::drop_draft(Draft draft, Told told) {
  ask([draft = std::move(draft)](Register& store) { return store.drop_draft(draft); },
      std::move(told));
}

void StoreLink::keep_settings(kneerail::Settings settings, Told told) {
  ask([settings = std::move(settings)](
          Register& store) { return kneerail::keep_settings(store, settings); },
      std::move(told));
}

void StoreLink::settle() {
  if (writer_) writer_->post([](Register&) { return 0; }).wait();
}

void StoreLink::ask(std::function<Result<>(Register&)> work, Told told) {
  if (!writer_) {
    const Result<> refused = kneerail::fail(Fault::conflict, why_read_only_);
    QMetaObject::invokeMethod(
        this, [told = std::move(told), refused] { told(refused); }, Qt::QueuedConnection);
    return;
  }
  writer_->post([this, work = std::move(work), told = std::move(told)](Register& store) {
    const Result<> done = work(store);
    QMetaObject::invokeMethod(
        this, [told, done] { told(done); }, Qt::QueuedConnection);
    return 0;
  });
}

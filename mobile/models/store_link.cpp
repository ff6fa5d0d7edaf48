#include "mobile/models/store_link.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>

#include "mobile/models/walk_ahead.h"
#include "schema/digest.h"
#include "schema/machine.h"
#include "schema/store/object_folder.h"
#include "schema/store/organisation_days.h"

using kneerail::Done;
using kneerail::Draft;
using kneerail::Entry;
using kneerail::Fault;
using kneerail::Mode;
using kneerail::Register;
using kneerail::Result;

namespace {

/// The first random bytes of a process load a library, and that waits while another is loaded.
void make_random_ready() {
  std::array<std::uint8_t, 1> unused{};
  kneerail::SecureRandom().fill(unused);
}

StoreLink::Opened opened_to(Mode mode, Register::Options options) {
  options.mode = mode;
  options.cache_kib = StoreLink::cache_kib;
  return Register::open(options);
}

}  // namespace

std::future<StoreLink::Ahead> StoreLink::read_ahead(const Register::Options& options) {
  return std::async(std::launch::async, [options] {
    if (options.random == nullptr) make_random_ready();
    Ahead ahead{opened_to(Mode::read, options)};
    if (!ahead.opened) return ahead;
    kneerail::Register& store = **ahead.opened;
    (void)kneerail::organisation_days(store.tables());
    kneerail::MachineClock own_clock;
    kneerail::Clock& clock = options.clock != nullptr ? *options.clock : own_clock;
    ahead.walked_last = kneerail::run_walked_last(store, clock.now());
    return ahead;
  });
}

Result<std::unique_ptr<StoreLink>> StoreLink::open(const Register::Options& options, Checks checks,
                                                   std::future<Ahead> ahead) {
  std::unique_ptr<StoreLink> link(new StoreLink);
  link->folder_ = options.folder;
  if (checks == Checks::behind) {
    Ahead reading = ahead.valid() ? ahead.get() : Ahead{opened_to(Mode::read, options)};
    if (link->read(std::move(reading.opened)) && link->may_be_shown()) {
      link->walked_last_ = std::move(reading.walked_last);
      link->to_check_ = options;
      return link;
    }
  }
  link->reader_.reset();
  auto writing = opened_to(Mode::write, options);
  const Result<> said = writing ? Result<>(Done{}) : kneerail::fail(writing.error());
  link->take_writer(std::move(writing));
  if (auto done = link->read(opened_to(Mode::read, options)); !done)
    return kneerail::fail(said ? done.error() : said.error());
  return link;
}

Result<> StoreLink::read(Opened opened) {
  if (!opened) return kneerail::fail(opened.error());
  reader_ = std::move(*opened);
  const auto days = kneerail::organisation_days(reader_->tables());
  if (days && !days->trouble.empty()) opening_.notes.push_back(days->trouble);
  return Done{};
}

bool StoreLink::may_be_shown() {
  const auto drafts = reader_->drafts();
  return drafts && drafts->empty();
}

void StoreLink::check() {
  if (!to_check_) return;
  checking_ = std::async(std::launch::async, [this, stop = stop_, options = *to_check_]() mutable {
    options.stop = stop.get();
    auto opened = opened_to(Mode::write, options);
    QMetaObject::invokeMethod(this, &StoreLink::end_checks, Qt::QueuedConnection);
    return opened;
  });
  to_check_.reset();
}

void StoreLink::end_checks() {
  if (!checking_.valid()) return;
  const std::vector<std::string> said = std::move(opening_.notes);
  take_writer(checking_.get());
  const bool as_read = writer_ != nullptr && opening_.notes.empty() &&
                       opening_.records_recovered == 0 && opening_.drafts_closed == 0;
  opening_.notes.insert(opening_.notes.end(), said.begin(), said.end());
  for (Asked& one : std::exchange(waiting_, {})) ask(std::move(one));
  emit checked(as_read);
}

void StoreLink::take_writer(Opened opened) {
  if (!opened) {
    why_read_only_ = opened.error().message;
    return;
  }
  opening_ = (*opened)->opening();
  if (opening_.writable) {
    writer_ = std::make_unique<kneerail::Writer>(std::move(*opened));
  } else {
    for (const std::string& note : opening_.notes) why_read_only_ += note + " ";
  }
}

void StoreLink::save(std::vector<Entry> entries, std::optional<Draft> ended, Told told) {
  ask({[entries = std::move(entries), ended = std::move(ended)](Register& store) -> Result<> {
         auto saved = ended ? store.save(entries, *ended) : store.save(entries);
         if (!saved) return kneerail::fail(saved.error());
         return Done{};
       },
       std::move(told)});
}

void StoreLink::save_draft(Draft draft, Told told) {
  ask({[draft = std::move(draft)](Register& store) { return store.save_draft(draft); },
       std::move(told)});
}

void StoreLink::drop_draft(Draft draft, Told told) {
  ask({[draft = std::move(draft)](Register& store) { return store.drop_draft(draft); },
       std::move(told)});
}

void StoreLink::seal(kneerail::VisitSeal seal, std::vector<std::uint8_t> signature, Told told) {
  ask({[seal = std::move(seal), signature = std::move(signature)](Register& store) -> Result<> {
         kneerail::VisitSeal signed_by = seal;
         if (!signature.empty()) {
           auto kept = store.keep_object(signature);
           if (!kept) return kneerail::fail(kept.error());
           signed_by.signature_picture = *kept;
         }
         auto sealed = store.seal(signed_by);
         if (!sealed) return kneerail::fail(sealed.error());
         return Done{};
       },
       std::move(told)});
}

std::string StoreLink::object_place(const kneerail::Digest& sha) const {
  return kneerail::object_place(kneerail::objects_of(folder_), sha).string();
}

void StoreLink::keep_objects(std::vector<kneerail::cbor::Bytes> objects, Kept told) {
  auto digests = std::make_shared<std::vector<kneerail::Digest>>();
  ask({[objects = std::move(objects), digests](Register& store) -> Result<> {
         for (const auto& bytes : objects) {
           auto kept = store.keep_object(bytes);
           if (!kept) return kneerail::fail(kept.error());
           digests->push_back(*kept);
         }
         return Done{};
       },
       [digests, told = std::move(told)](const Result<>& done) {
         if (done)
           told(*digests);
         else
           told(kneerail::fail(done.error()));
       }});
}

void StoreLink::keep_settings(kneerail::Settings settings, Told told) {
  ask({[settings = std::move(settings)](Register& store) {
         return kneerail::keep_settings(store, settings);
       },
       std::move(told), true});
}

void StoreLink::settle() {
  if (!waiting_.empty()) check();
  if (checking_.valid()) {
    checking_.wait();
    end_checks();
  }
  if (writer_) writer_->post([](Register&) { return 0; }).wait();
}

void StoreLink::close() {
  const bool wanted = std::any_of(waiting_.begin(), waiting_.end(),
                                  [](const Asked& one) { return !one.may_be_left; });
  if (!unchecked() || wanted) return settle();
  stop_->store(true);
  to_check_.reset();
  std::vector<Asked> left = std::exchange(waiting_, {});
  if (!checking_.valid()) return;
  auto opened = checking_.get();
  if (!opened) return;
  take_writer(std::move(opened));  // they had just ended
  for (Asked& one : left) ask(std::move(one));
  settle();
}

StoreLink::~StoreLink() {
  stop_->store(true);
}

void StoreLink::ask(Asked asked) {
  if (unchecked()) {
    waiting_.push_back(std::move(asked));
    check();
    return;
  }
  if (!writer_) {
    const Result<> refused = kneerail::fail(Fault::conflict, why_read_only_);
    QMetaObject::invokeMethod(
        this, [told = std::move(asked.told), refused] { told(refused); }, Qt::QueuedConnection);
    return;
  }
  writer_->post([this, asked = std::move(asked)](Register& store) {
    const Result<> done = asked.work(store);
    QMetaObject::invokeMethod(
        this, [told = asked.told, done] { told(done); }, Qt::QueuedConnection);
    return 0;
  });
}

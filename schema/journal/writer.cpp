#include "schema/journal/writer.h"

namespace kneerail {

Writer::Writer(std::unique_ptr<Register> opened)
    : register_(std::move(opened)), thread_([this] { run(); }) {}

Writer::~Writer() {
  {
    const std::lock_guard lock(mutex_);
    ending_ = true;
  }
  changed_.notify_all();
  thread_.join();
}

void Writer::push(Work work, Urgency urgency) {
  {
    const std::lock_guard lock(mutex_);
    (urgency == Urgency::entry ? entries_ : background_).push_back(std::move(work));
  }
  changed_.notify_one();
}

void Writer::run() {
  for (;;) {
    Work work;
    {
      std::unique_lock lock(mutex_);
      changed_.wait(lock, [this] { return ending_ || !entries_.empty() || !background_.empty(); });
      auto& queue = entries_.empty() ? background_ : entries_;
      if (queue.empty()) return;
      work = std::move(queue.front());
      queue.pop_front();
    }
    work(*register_);
  }
}

std::future<Result<std::vector<Uuid>>> Writer::save(std::vector<Entry> entries) {
  return post([entries = std::move(entries)](Register& opened) { return opened.save(entries); });
}

void Writer::save(std::vector<Entry> entries, std::function<void(Result<std::vector<Uuid>>)> told) {
  (void)post([entries = std::move(entries), told = std::move(told)](Register& opened) {
    told(opened.save(entries));
  });
}

std::future<Result<>> Writer::save_draft(Draft draft) {
  return post([draft = std::move(draft)](Register& opened) { return opened.save_draft(draft); });
}

std::future<Result<Uuid>> Writer::close_draft(Draft draft) {
  return post([draft = std::move(draft)](Register& opened) { return opened.close_draft(draft); });
}

}  // namespace kneerail

#pragma once

// One thread owns the open register and does all writing, in the order it was asked; who asks gets
// the result later. Entries of a person go before background work, which comes in pages of its own
// (at most 2,000 records or 50 ms each), so that an entry never waits long. Screens read on a
// register of their own, opened with Mode::read.

#include <condition_variable>
#include <deque>
#include <functional>
#include <future>
#include <memory>
#include <mutex>
#include <thread>
#include <type_traits>
#include <utility>
#include <vector>

#include "schema/store/register.h"

namespace kneerail {

class Writer {
 public:
  enum class Urgency { entry, background };

  explicit Writer(std::unique_ptr<Register> opened);
  /// Does what is still asked for, then closes the register.
  ~Writer();
  Writer(const Writer&) = delete;
  Writer& operator=(const Writer&) = delete;

  std::future<Result<std::vector<Uuid>>> save(std::vector<Entry> entries);
  /// `told` is called on the writer's thread.
  void save(std::vector<Entry> entries, std::function<void(Result<std::vector<Uuid>>)> told);
  std::future<Result<>> save_draft(Draft draft);
  std::future<Result<Uuid>> close_draft(Draft draft);

  /// Any work on the register, on the writer's thread. The action must not throw.
  template <class Action>
  std::future<std::invoke_result_t<Action, Register&>> post(Action action,
                                                            Urgency urgency = Urgency::entry) {
    std::packaged_task<std::invoke_result_t<Action, Register&>(Register&)> task(std::move(action));
    auto result = task.get_future();
    push(Work([task = std::move(task)](Register& opened) mutable { task(opened); }), urgency);
    return result;
  }

 private:
  using Work = std::packaged_task<void(Register&)>;
  void push(Work work, Urgency urgency);
  void run();

  // The mutex guards the two queues and the flag, nothing else: the register is touched by the
  // thread alone. Nobody holds it while working, so neither side can wait for the other.
  std::mutex mutex_;
  std::condition_variable changed_;
  std::deque<Work> entries_;
  std::deque<Work> background_;
  bool ending_ = false;
  std::unique_ptr<Register> register_;
  std::thread thread_;  ///< last: it starts when all else is there
};

}  // namespace kneerail

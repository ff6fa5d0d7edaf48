#include "schema/journal/second_copy.h"

#include <algorithm>
#include <array>
#include <cstring>
#include <optional>
#include <string_view>

#include "core/records/record.h"
#include "schema/journal/crc32c.h"

namespace kneerail {
namespace {

constexpr std::string_view magic = "kneerail unsent ";
constexpr std::int64_t head_bytes = 48;
constexpr std::size_t frame_head_bytes = 8;
constexpr std::size_t payload_head_bytes = 26;  // type, more, feed, seq
constexpr std::size_t payload_bytes_max = payload_head_bytes + 2 * record_bytes_max;

template <class Number>
void put_number(Number number, cbor::Bytes& out) {
  for (std::size_t i = 0; i < sizeof(Number); ++i) {
    out.push_back(static_cast<std::uint8_t>(number >> (8 * i)));
  }
}

template <class Number>
Number take_number(std::span<const std::uint8_t> bytes) {
  Number number = 0;
  for (std::size_t i = 0; i < sizeof(Number); ++i) {
    number = static_cast<Number>(number | (Number{bytes[i]} << (8 * i)));
  }
  return number;
}

Uuid take_id(std::span<const std::uint8_t> bytes) {
  Uuid id;
  std::copy_n(bytes.begin(), id.bytes.size(), id.bytes.begin());
  return id;
}

cbor::Bytes head_of(const Uuid& device) {
  cbor::Bytes head(static_cast<std::size_t>(head_bytes));
  std::ranges::copy(magic, head.begin());
  std::ranges::copy(device.bytes, head.begin() + 16);
  cbor::Bytes sum;
  put_number(crc32c(std::span(head).first(32)), sum);
  std::ranges::copy(sum, head.begin() + 32);
  return head;
}

void put_frame(const CopyFrame& frame, bool more, cbor::Bytes& out) {
  const std::size_t start = out.size();
  out.resize(start + frame_head_bytes);
  out.push_back(static_cast<std::uint8_t>(frame.type));
  out.push_back(more ? 1 : 0);
  out.insert(out.end(), frame.feed.bytes.begin(), frame.feed.bytes.end());
  put_number(static_cast<std::uint64_t>(frame.seq), out);
  out.insert(out.end(), frame.bytes.begin(), frame.bytes.end());
  const std::span<const std::uint8_t> payload(out.data() + start + frame_head_bytes,
                                              out.size() - start - frame_head_bytes);
  cbor::Bytes head;
  put_number(static_cast<std::uint32_t>(payload.size()), head);
  put_number(crc32c(payload), head);
  std::copy(head.begin(), head.end(), out.begin() + static_cast<std::ptrdiff_t>(start));
}

/// Reads a file from front to back with one buffer of a step's size.
class Reader {
 public:
  explicit Reader(File& file) : file_(file), at_(head_bytes) {}

  /// The next so many bytes without moving on; fewer at the end of the file.
  Result<std::span<const std::uint8_t>> peek(std::size_t count) {
    if (buffer_.size() - from_ < count) {
      buffer_.erase(buffer_.begin(), buffer_.begin() + static_cast<std::ptrdiff_t>(from_));
      from_ = 0;
      const std::size_t kept = buffer_.size();
      buffer_.resize(std::max<std::size_t>(count, 1U << 20));
      auto more =
          file_.read(at_ + static_cast<std::int64_t>(kept), std::span(buffer_).subspan(kept));
      if (!more) return fail(more.error());
      buffer_.resize(kept + *more);
    }
    return std::span<const std::uint8_t>(buffer_).subspan(from_,
                                                          std::min(count, buffer_.size() - from_));
  }
  void move_on(std::size_t count) {
    from_ += count;
    at_ += static_cast<std::int64_t>(count);
  }
  [[nodiscard]] std::int64_t at() const { return at_; }

 private:
  File& file_;
  cbor::Bytes buffer_;
  std::size_t from_ = 0;  ///< place of `at_` in the buffer
  std::int64_t at_;
};

struct Step {
  enum class What { frame, damaged, end, rest_damaged } what = What::end;
  CopyFrame frame;
  bool more = false;
};

std::optional<Step> frame_of(std::span<const std::uint8_t> payload) {
  const auto type = payload[0];
  if (type < 1 || type > 3 || payload[1] > 1) return std::nullopt;
  Step step{Step::What::frame, {}, payload[1] == 1};
  step.frame.type = static_cast<CopyFrame::Type>(type);
  step.frame.feed = take_id(payload.subspan(2));
  step.frame.seq = static_cast<std::int64_t>(take_number<std::uint64_t>(payload.subspan(18)));
  const auto bytes = payload.subspan(payload_head_bytes);
  step.frame.bytes.assign(bytes.begin(), bytes.end());
  return step;
}

/// One frame further. A frame whose sum does not fit is passed over by its length; whether that
/// length was damaged too shows at the next one.
Result<Step> next(Reader& reader) {
  auto head = reader.peek(frame_head_bytes);
  if (!head) return fail(head.error());
  if (head->size() < frame_head_bytes) return Step{};
  const auto length = take_number<std::uint32_t>(*head);
  const auto sum = take_number<std::uint32_t>(head->subspan(4));
  if (length == 0 && sum == 0) return Step{};
  if (length < payload_head_bytes || length > payload_bytes_max) {
    return Step{Step::What::rest_damaged, {}, false};
  }
  auto whole = reader.peek(frame_head_bytes + length);
  if (!whole) return fail(whole.error());
  if (whole->size() < frame_head_bytes + length) return Step{Step::What::rest_damaged, {}, false};
  const auto payload = whole->subspan(frame_head_bytes);
  auto step = crc32c(payload) == sum ? frame_of(payload) : std::nullopt;
  reader.move_on(frame_head_bytes + length);
  return step ? *step : Step{Step::What::damaged, {}, false};
}

Result<Uuid> read_head(File& file, const std::filesystem::path& path) {
  cbor::Bytes head(static_cast<std::size_t>(head_bytes));
  auto count = file.read(0, head);
  if (!count) return fail(count.error());
  const Uuid device = *count == head.size() ? take_id(std::span(head).subspan(16)) : Uuid{};
  if (*count != head.size() || head != head_of(device)) {
    return fail(Fault::corrupt, path.string() + ": The head of the second copy is damaged.");
  }
  return device;
}

Result<> check_owner(File& file, const std::filesystem::path& path, const Uuid& device) {
  auto owner = read_head(file, path);
  if (!owner) return fail(owner.error());
  if (*owner == device) return Done{};
  return fail(Fault::corrupt, path.string() + ": This second copy is another device's.");
}

}  // namespace

Result<Uuid> SecondCopy::device_of(Files& files, const std::filesystem::path& path) {
  auto file = files.open(path, Files::Access::read);
  if (!file) return fail(file.error());
  return read_head(**file, path);
}

Result<SecondCopy> SecondCopy::open(Files& files, const std::filesystem::path& path,
                                    const Uuid& device) {
  auto file = files.open(path, Files::Access::create);
  if (!file) return fail(file.error());
  auto size = (*file)->size();
  if (!size) return fail(size.error());
  SecondCopy copy(std::move(*file), *size);
  if (*size == 0) {
    copy.end_ = head_bytes;
    if (auto room = copy.make_room(0); !room) return fail(room.error());
    if (auto done = copy.file_->write(0, head_of(device)); !done) return fail(done.error());
    if (auto done = copy.file_->sync(); !done) return fail(done.error());
    return copy;
  }
  if (auto owned = check_owner(*copy.file_, path, device); !owned) return fail(owned.error());
  auto read = copy.read([](std::span<const CopyFrame>) { return true; });
  if (!read) return fail(read.error());
  return copy;
}

Result<SecondCopy> SecondCopy::open_reading(Files& files, const std::filesystem::path& path,
                                            const Uuid& device) {
  auto file = files.open(path, Files::Access::read);
  if (!file) return fail(file.error());
  if (auto owned = check_owner(**file, path, device); !owned) return fail(owned.error());
  auto size = (*file)->size();
  if (!size) return fail(size.error());
  return SecondCopy(std::move(*file), *size);
}

bool SecondCopy::is_empty() const {
  return end_ == head_bytes;
}

Result<SecondCopy::Reading> SecondCopy::read(const Visit& visit) {
  Reader reader(*file_);
  Reading reading;
  std::int64_t end = head_bytes;  // behind the last whole transaction
  std::int64_t damaged_behind = 0;
  std::vector<CopyFrame> group;
  for (bool wanted = true;;) {
    auto step = next(reader);
    if (!step) return fail(step.error());
    if (step->what == Step::What::end) break;
    if (step->what == Step::What::rest_damaged) {
      ++damaged_behind;
      break;
    }
    if (step->what == Step::What::damaged) {
      ++damaged_behind;
      group.clear();
      continue;
    }
    ++reading.frames;
    group.push_back(std::move(step->frame));
    if (step->more) continue;
    if (wanted) wanted = visit(group);
    group.clear();
    end = reader.at();
    reading.damaged += damaged_behind;
    damaged_behind = 0;
  }
  // What is not whole behind the last transaction is a write that the power cut short: it was never
  // said to be saved. It counts as damage only where something whole follows.
  end_ = end_before_ = end;
  return reading;
}

Result<> SecondCopy::make_room(std::int64_t bytes) {
  const std::int64_t wanted = end_ + bytes + static_cast<std::int64_t>(frame_head_bytes);
  if (wanted <= capacity_) return Done{};
  const std::int64_t capacity = (wanted + step_bytes - 1) / step_bytes * step_bytes;
  const cbor::Bytes zeros(std::size_t{256} << 10);
  for (std::int64_t at = capacity_; at < capacity;) {
    const auto part = std::min<std::int64_t>(capacity - at, std::ssize(zeros));
    const auto span = std::span(zeros).first(static_cast<std::size_t>(part));
    if (auto done = file_->write(at, span); !done) {
      (void)file_->set_size(capacity_);  // gives back the part that did fit
      return fail(done.error());
    }
    at += part;
  }
  if (auto done = file_->sync(); !done) return fail(done.error());
  capacity_ = capacity;
  return Done{};
}

Result<> SecondCopy::append(std::span<const CopyFrame> group) {
  if (auto done = start_append(group); !done) return done;
  auto done = sync();
  if (!done) end_ = end_before_;
  return done;
}

Result<> SecondCopy::sync() {
  return file_->sync();
}

Result<> SecondCopy::start_append(std::span<const CopyFrame> group) {
  cbor::Bytes out;
  for (std::size_t i = 0; i < group.size(); ++i) put_frame(group[i], i + 1 < group.size(), out);
  const auto length = std::ssize(out);
  if (auto room = make_room(length); !room) return fail(room.error());
  out.resize(out.size() + frame_head_bytes);  // the zeros behind the last frame
  end_before_ = end_;
  if (auto done = file_->write(end_, out); !done) return fail(done.error());
  file_->start_sync(end_, std::ssize(out));
  end_ += length;
  return Done{};
}

void SecondCopy::take_back() {
  end_ = end_before_;
  // Where even this fails, the next append overwrites the refused frames.
  const std::array<std::uint8_t, frame_head_bytes> zeros{};
  if (file_->write(end_, zeros)) (void)file_->sync();
}

Result<> SecondCopy::start_anew() {
  end_ = end_before_ = head_bytes;
  const std::array<std::uint8_t, frame_head_bytes> zeros{};
  if (auto done = file_->write(end_, zeros); !done) return fail(done.error());
  return file_->sync();
}

}  // namespace kneerail

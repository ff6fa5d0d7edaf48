#include "schema/journal/journal_pages.h"

#include <algorithm>
#include <array>
#include <optional>
#include <span>
#include <utility>

namespace kneerail {
namespace {

constexpr std::size_t page_bytes = 4096;
constexpr std::size_t local_max = page_bytes - 35;
constexpr std::size_t local_min = (page_bytes - 12) * 32 / 255 - 23;
constexpr std::uint64_t payload_max = record_bytes_max + 1024;
constexpr std::int64_t log_head_bytes = 32;
constexpr std::int64_t frame_head_bytes = 24;
constexpr std::size_t columns = 10;

using Page = std::array<std::uint8_t, page_bytes>;
using Bytes = std::span<const std::uint8_t>;

/// A reader of bytes that says when it ran over their end.
struct Cursor {
  Bytes bytes;
  std::size_t at = 0;
  bool over = false;

  std::uint8_t byte() {
    if (at >= bytes.size()) over = true;
    return over ? std::uint8_t{0} : bytes[at++];
  }
  std::uint64_t varint() {
    std::uint64_t number = 0;
    for (int i = 0; i < 8; ++i) {
      const std::uint8_t next = byte();
      number = (number << 7) | (next & 0x7fU);
      if ((next & 0x80U) == 0) return number;
    }
    return (number << 8) | byte();
  }
  Bytes take(std::uint64_t count) {
    if (count > bytes.size() - std::min(at, bytes.size())) over = true;
    if (over) return {};
    at += static_cast<std::size_t>(count);
    return bytes.subspan(at - static_cast<std::size_t>(count), static_cast<std::size_t>(count));
  }
};

std::uint64_t big_endian(Bytes bytes) {
  std::uint64_t number = 0;
  for (const std::uint8_t byte : bytes) number = (number << 8) | byte;
  return number;
}

/// An integer of one of the types 1 to 6, 8 and 9; nothing for another type.
std::optional<std::int64_t> integer(std::uint64_t type, Cursor& cursor) {
  constexpr std::array<std::size_t, 7> widths = {0, 1, 2, 3, 4, 6, 8};
  if (type == 8) return 0;
  if (type == 9) return 1;
  if (type < 1 || type > 6) return std::nullopt;
  const std::size_t width = widths[static_cast<std::size_t>(type)];
  const Bytes bytes = cursor.take(width);
  if (bytes.empty()) return std::nullopt;
  std::uint64_t number = big_endian(bytes);
  if (width < 8 && (bytes[0] & 0x80U) != 0) number |= ~std::uint64_t{0} << (8 * width);
  return static_cast<std::int64_t>(number);
}

/// The row of a whole payload, where its columns have the journal's types.
std::optional<JournalRow> row_of(std::int64_t lid, Bytes payload) {
  Cursor head{payload};
  const std::uint64_t head_bytes = head.varint();
  if (head_bytes > payload.size()) return std::nullopt;
  std::array<std::uint64_t, columns> types{};
  for (auto& type : types) type = head.varint();
  if (head.over || head.at > head_bytes) return std::nullopt;
  if (types[0] != 0 || types[4] != 44 || types[5] < 12 || types[5] % 2 != 0 || types[6] != 76) {
    return std::nullopt;
  }
  JournalRow row;
  row.lid = lid;
  Cursor body{payload, static_cast<std::size_t>(head_bytes)};
  const auto feed = integer(types[1], body);
  const auto dev = integer(types[2], body);
  const auto seq = integer(types[3], body);
  std::ranges::copy(body.take(16), row.id.bytes.begin());
  const Bytes bytes = body.take((types[5] - 12) / 2);
  std::ranges::copy(body.take(32), row.digest.begin());
  const auto hseq = integer(types[7], body);
  const auto recv = integer(types[8], body);
  const auto flags = integer(types[9], body);
  if (body.over || !feed || !dev || !seq || *seq < 1) return std::nullopt;
  row.feed = *feed;
  row.dev = *dev;
  row.seq = *seq;
  row.bytes.assign(bytes.begin(), bytes.end());
  if (hseq) row.stamp = Stamp{*hseq, recv.value_or(0), flags.value_or(0)};
  return row;
}

/// Pages of the register's file, or of its log; the last one read is kept.
class Pages {
 public:
  Pages(std::unique_ptr<File> file, std::int64_t head, std::int64_t before_each, bool numbered)
      : file_(std::move(file)), head_(head), before_each_(before_each), numbered_(numbered) {}

  /// The page at that place, from 0; null behind the last.
  Result<const Page*> at(std::int64_t place) {
    if (place == held_) return &page_;
    held_ = -1;
    const std::int64_t stride = static_cast<std::int64_t>(page_bytes) + before_each_;
    auto count = file_->read(head_ + place * stride + before_each_, page_);
    if (!count) return fail(count.error());
    if (*count < page_bytes) return static_cast<const Page*>(nullptr);
    held_ = place;
    return &page_;
  }
  /// Whether a page's number is its place: in a log it is not.
  [[nodiscard]] bool numbered() const { return numbered_; }
  File& file() { return *file_; }

 private:
  std::unique_ptr<File> file_;
  std::int64_t head_;
  std::int64_t before_each_;
  bool numbered_;
  std::int64_t held_ = -1;
  Page page_{};
};

/// The rest of a long payload, from its chain of pages. False: the chain breaks.
bool add_overflow(File& file, std::uint64_t number, std::uint64_t length, cbor::Bytes& payload) {
  Page page{};
  while (payload.size() < length) {
    if (number < 2 || number > 0x7fffffffU) return false;
    auto count = file.read(
        static_cast<std::int64_t>(number - 1) * static_cast<std::int64_t>(page_bytes), page);
    if (!count || *count < page_bytes) return false;
    const auto part = std::min<std::uint64_t>(length - payload.size(), page_bytes - 4);
    const Bytes content = Bytes(page).subspan(4, static_cast<std::size_t>(part));
    payload.insert(payload.end(), content.begin(), content.end());
    number = big_endian(Bytes(page).first(4));
  }
  return true;
}

std::optional<JournalRow> row_at(Pages& pages, const Page& page, std::size_t offset) {
  Cursor cell{Bytes(page), offset};
  const std::uint64_t length = cell.varint();
  const auto lid = static_cast<std::int64_t>(cell.varint());
  if (cell.over || lid < 1 || length < 64 || length > payload_max) return std::nullopt;
  if (length <= local_max) {
    const Bytes payload = cell.take(length);
    return cell.over ? std::nullopt : row_of(lid, payload);
  }
  const std::size_t wanted =
      local_min + (static_cast<std::size_t>(length) - local_min) % (page_bytes - 4);
  const Bytes local = cell.take(wanted <= local_max ? wanted : local_min);
  const Bytes next = cell.take(4);
  if (cell.over || !pages.numbered()) return std::nullopt;
  cbor::Bytes payload(local.begin(), local.end());
  if (!add_overflow(pages.file(), big_endian(next), length, payload)) return std::nullopt;
  return row_of(lid, payload);
}

/// Where a row stands.
struct Place {
  std::int64_t lid = 0;
  Pages* pages = nullptr;
  std::int64_t page = 0;
  std::size_t offset = 0;
};

Result<> find_places(Pages& pages, std::vector<Place>& places) {
  for (std::int64_t number = 0;; ++number) {
    auto page = pages.at(number);
    if (!page) return fail(page.error());
    if (*page == nullptr) return Done{};
    const Page& bytes = **page;
    if (bytes[0] != 13) continue;
    const auto cells =
        std::min<std::uint64_t>(big_endian(Bytes(bytes).subspan(3, 2)), (page_bytes - 8) / 2);
    for (std::size_t cell = 0; cell < cells; ++cell) {
      const auto offset =
          static_cast<std::size_t>(big_endian(Bytes(bytes).subspan(8 + 2 * cell, 2)));
      if (const auto row = row_at(pages, bytes, offset)) {
        places.push_back({row->lid, &pages, number, offset});
      }
    }
  }
}

}  // namespace

Result<> read_journal_pages(Files& files, const std::filesystem::path& records,
                            const std::function<void(const JournalRow&)>& take) {
  std::filesystem::path log = records;
  log += "-wal";
  auto file = files.open(records, Files::Access::read);
  if (!file) return fail(file.error());
  std::vector<Place> places;
  Pages of_file(std::move(*file), 0, 0, true);
  if (auto done = find_places(of_file, places); !done) return done;
  std::optional<Pages> of_log;
  if (files.exists(log)) {
    auto logged = files.open(log, Files::Access::read);
    if (!logged) return fail(logged.error());
    of_log.emplace(std::move(*logged), log_head_bytes, frame_head_bytes, false);
    if (auto done = find_places(*of_log, places); !done) return done;
  }
  std::ranges::stable_sort(places, {}, &Place::lid);
  for (const Place& place : places) {
    auto page = place.pages->at(place.page);
    if (!page) return fail(page.error());
    if (*page == nullptr) continue;
    if (const auto row = row_at(*place.pages, **page, place.offset)) take(*row);
  }
  return Done{};
}

}  // namespace kneerail

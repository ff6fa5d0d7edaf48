#include "schema/journal/identity.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "schema/journal/crc32c.h"

namespace kneerail {
namespace {

enum Key : int { key_format = 0, key_device, key_signing_secret, key_hub, key_hub_pin, key_feeds };
constexpr std::int64_t format = 1;
constexpr std::size_t sum_bytes = 4;
constexpr std::int64_t file_bytes_max = 64 * 1024;

cbor::Bytes sum_of(std::span<const std::uint8_t> bytes) {
  const std::uint32_t sum = crc32c(bytes);
  cbor::Bytes out;
  for (int shift = 0; shift < 32; shift += 8) {
    out.push_back(static_cast<std::uint8_t>(sum >> shift));
  }
  return out;
}

std::optional<std::string> text_at(const cbor::Map& map, int key) {
  const auto* value = map.find(key);
  const auto* text = value == nullptr ? nullptr : value->text();
  if (text == nullptr) return std::nullopt;
  return *text;
}

std::optional<Identity> identity_of(const cbor::Map& map) {
  const auto* version = map.find(key_format);
  const auto* device = map.find(key_device);
  const auto* secret = map.find(key_signing_secret);
  const auto* feeds = map.find(key_feeds);
  auto hub = text_at(map, key_hub);
  auto pin = text_at(map, key_hub_pin);
  if (version == nullptr || *version != cbor::Value(format)) return std::nullopt;
  if (device == nullptr || !device->uuid() || !hub || !pin) return std::nullopt;
  if (secret == nullptr || secret->bytes() == nullptr || feeds == nullptr) return std::nullopt;
  Identity identity;
  if (secret->bytes()->size() != identity.signing_secret.size()) return std::nullopt;
  if (feeds->array() == nullptr) return std::nullopt;
  identity.device = *device->uuid();
  std::copy(secret->bytes()->begin(), secret->bytes()->end(), identity.signing_secret.begin());
  identity.hub = std::move(*hub);
  identity.hub_pin = std::move(*pin);
  for (const auto& feed : *feeds->array()) {
    if (!feed.uuid()) return std::nullopt;
    identity.feeds.push_back(*feed.uuid());
  }
  return identity;
}

}  // namespace

cbor::Bytes encode(const Identity& identity) {
  cbor::Array feeds;
  for (const Uuid& feed : identity.feeds) feeds.emplace_back(feed);
  cbor::Map map;
  map.set(key_format, format);
  map.set(key_device, identity.device);
  map.set(key_signing_secret,
          cbor::Bytes(identity.signing_secret.begin(), identity.signing_secret.end()));
  map.set(key_hub, identity.hub);
  map.set(key_hub_pin, identity.hub_pin);
  map.set(key_feeds, std::move(feeds));
  cbor::Bytes bytes = cbor::encode(map);
  const cbor::Bytes sum = sum_of(bytes);
  bytes.insert(bytes.end(), sum.begin(), sum.end());
  return bytes;
}

Result<Identity> decode_identity(std::span<const std::uint8_t> bytes) {
  const Error damaged = fail(Fault::corrupt, "The identity file is damaged.");
  if (bytes.size() <= sum_bytes) return damaged;
  const auto content = bytes.first(bytes.size() - sum_bytes);
  if (!std::ranges::equal(sum_of(content), bytes.last(sum_bytes))) return damaged;
  auto value = cbor::decode(content);
  if (!value || value->map() == nullptr) return damaged;
  auto identity = identity_of(*value->map());
  if (!identity) return damaged;
  return *identity;
}

Result<Identity> read_identity(Files& files, const std::filesystem::path& path) {
  auto file = files.open(path, Files::Access::read);
  if (!file) return fail(file.error());
  auto size = (*file)->size();
  if (!size) return fail(size.error());
  cbor::Bytes bytes(static_cast<std::size_t>(std::min(*size, file_bytes_max)));
  auto count = (*file)->read(0, bytes);
  if (!count) return fail(count.error());
  bytes.resize(*count);
  return decode_identity(bytes);
}

Result<> write_identity(Files& files, const std::filesystem::path& path, const Identity& identity) {
  std::filesystem::path beside = path;
  beside += ".new";
  {
    auto file = files.open(beside, Files::Access::create);
    if (!file) return fail(file.error());
    if (auto done = (*file)->set_size(0); !done) return done;
    if (auto done = (*file)->write(0, encode(identity)); !done) return done;
    if (auto done = (*file)->sync(); !done) return done;
  }
  return files.rename(beside, path);
}

}  // namespace kneerail

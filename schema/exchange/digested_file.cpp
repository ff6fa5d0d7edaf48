#include "schema/exchange/digested_file.h"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <span>
#include <system_error>

namespace kneerail {

namespace {

/// Beside the name, where nobody else writes: not another process that makes the same file either.
std::filesystem::path unfinished(const std::filesystem::path& file) {
  auto path = std::filesystem::absolute(file);
  path += "." + std::to_string(::getpid()) + ".unfinished";
  return path;
}

Error not_written(const std::filesystem::path& file) {
  return fail(Fault::io, file.string() +
                             " could not be written. Is its folder there and writable, and is "
                             "there room? The register is as it was.");
}

/// The words of a first line before its numbers: what kind of file it is.
std::string_view kind_of(std::string_view line) {
  return line.substr(0, std::min(line.size(), line.find_first_of("0123456789")));
}

}  // namespace

std::string length_bytes(std::uint64_t length) {
  std::string bytes;
  for (int i = 0; i < 8; ++i) bytes += static_cast<char>((length >> (8 * i)) & 0xff);
  return bytes;
}

std::uint64_t length_of(std::string_view eight_bytes) {
  std::uint64_t length = 0;
  for (std::size_t i = 0; i < eight_bytes.size(); ++i)
    length |= std::uint64_t{static_cast<unsigned char>(eight_bytes[i])} << (8 * i);
  return length;
}

Error damaged_file(const std::filesystem::path& file) {
  return fail(Fault::corrupt, file.string() +
                                  " is cut short or damaged. Nothing of it was used, and the "
                                  "register is as it was. Make it again.");
}

Error other_file(const std::filesystem::path& file, std::string_view line, std::string_view found) {
  if (found.starts_with(kind_of(line)) && found.size() > kind_of(line).size())
    return fail(Fault::corrupt,
                file.string() + " was written by another version of this program ('" +
                    std::string(found) + "', and this one writes '" + std::string(line) +
                    "'), whose models may say something else. Nothing of it was used; the register "
                    "is as it was. Make it again with this one, and all files of the same "
                    "forecast with it.");
  return fail(Fault::corrupt, file.string() + " does not begin with '" + std::string(line) +
                                  "': it is another kind of file, or of another program. Nothing "
                                  "of it was used; the register is as it was.");
}

struct DigestedWriter::Inside {
  std::filesystem::path file;
  std::filesystem::path beside;
  std::shared_ptr<Files> files;
  std::unique_ptr<File> out = {};
  std::uint64_t position = 0;
  Sha256 digest = {};
  bool finished = false;

  Inside(const Inside&) = delete;
  Inside& operator=(const Inside&) = delete;
  Inside(std::filesystem::path to, std::shared_ptr<Files> on)
      : file(std::move(to)), beside(unfinished(file)), files(std::move(on)) {}
  ~Inside() {
    if (finished || !out) return;
    out.reset();
    (void)files->remove(beside);
  }

  Result<> put(std::string_view bytes) {
    const auto* first = reinterpret_cast<const std::uint8_t*>(bytes.data());
    const auto at = static_cast<std::int64_t>(position);
    position += bytes.size();
    if (auto ok = out->write(at, std::span(first, bytes.size())); !ok) return not_written(file);
    return Done{};
  }
};

DigestedWriter::DigestedWriter(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
DigestedWriter::DigestedWriter(DigestedWriter&&) noexcept = default;
DigestedWriter::~DigestedWriter() = default;

std::uint64_t DigestedWriter::position() const {
  return inside_->position;
}

Result<DigestedWriter> DigestedWriter::create(const std::filesystem::path& file,
                                              std::string_view line, std::shared_ptr<Files> files) {
  DigestedWriter writer(std::make_unique<Inside>(file, std::move(files)));
  Inside& inside = *writer.inside_;
  auto out = inside.files->open(inside.beside, Files::Access::create);
  if (!out) return not_written(file);
  inside.out = std::move(*out);
  if (!inside.out->set_size(0)) return not_written(file);
  if (auto ok = writer.write(std::string(line) + "\n"); !ok) return fail(ok.error());
  return writer;
}

Result<> DigestedWriter::write(std::string_view bytes) {
  inside_->digest.add(bytes);
  return inside_->put(bytes);
}

Result<> DigestedWriter::block(std::string_view bytes) {
  if (auto ok = write(length_bytes(bytes.size())); !ok) return ok;
  return write(bytes);
}

/// A name that is on disk before what it names would be an empty file after a power cut.
Result<> DigestedWriter::finish() {
  const Digest digest = inside_->digest.finish();
  const std::string_view bytes(reinterpret_cast<const char*>(digest.data()), digest.size());
  if (auto ok = inside_->put(bytes); !ok) return ok;
  if (!inside_->out->sync()) return not_written(inside_->file);
  const auto name = std::filesystem::absolute(inside_->file);
  if (!inside_->files->rename(inside_->beside, name)) return not_written(inside_->file);
  inside_->finished = true;
  return Done{};
}

Result<DigestedReader> DigestedReader::open(const std::filesystem::path& file,
                                            std::string_view line) {
  DigestedReader reader;
  reader.file_ = file;
  std::error_code failed;
  const auto size = std::filesystem::file_size(file, failed);
  reader.in_.open(file, std::ios::binary);
  if (failed || !reader.in_)
    return fail(Fault::not_found, "There is no file " + file.string() +
                                      " that can be read. Nothing was done; the register is as it "
                                      "was.");
  constexpr std::size_t longest_line = 200;
  std::string found(std::min<std::size_t>(longest_line, static_cast<std::size_t>(size)), '\0');
  reader.in_.read(found.data(), static_cast<std::streamsize>(found.size()));
  const auto end = found.find('\n');
  if (!reader.in_ || end == std::string::npos || found.substr(0, end) != line)
    return other_file(file, line, found.substr(0, end == std::string::npos ? 0 : end));
  found.resize(end + 1);
  reader.in_.seekg(static_cast<std::streamoff>(found.size()));
  reader.digest_.add(found);
  reader.position_ = found.size();
  if (size < found.size() + Digest{}.size()) return reader.damaged();
  reader.left_ = size - found.size() - Digest{}.size();
  return reader;
}

Result<std::string> DigestedReader::block() {
  std::array<char, 8> bytes{};
  if (left_ < bytes.size()) return damaged();
  in_.read(bytes.data(), bytes.size());
  left_ -= bytes.size();
  const std::uint64_t length = length_of({bytes.data(), bytes.size()});
  if (!in_ || length > left_) return damaged();
  std::string block(static_cast<std::size_t>(length), '\0');
  in_.read(block.data(), static_cast<std::streamsize>(length));
  if (!in_) return damaged();
  left_ -= length;
  position_ += bytes.size() + length;
  digest_.add(std::string_view(bytes.data(), bytes.size())).add(block);
  return block;
}

Result<> DigestedReader::whole() {
  Digest written{};
  in_.read(reinterpret_cast<char*>(written.data()), static_cast<std::streamsize>(written.size()));
  if (left_ != 0 || !in_ || digest_.finish() != written) return damaged();
  return Done{};
}

}  // namespace kneerail

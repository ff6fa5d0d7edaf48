#include "schema/exchange/digested_file.h"

#include <array>
#include <system_error>

namespace kneerail {

namespace {

std::filesystem::path unfinished(const std::filesystem::path& file) {
  auto path = file;
  path += ".unfinished";
  return path;
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

Error other_file(const std::filesystem::path& file, std::string_view line) {
  return fail(Fault::corrupt, file.string() + " does not begin with '" + std::string(line) +
                                  "': it is another kind of file, or of another program. Nothing "
                                  "of it was used; the register is as it was.");
}

Error DigestedWriter::not_written() const {
  return fail(Fault::io, file_.string() +
                             " could not be written. Is its folder there and writable, and is "
                             "there room? The register is as it was.");
}

Result<DigestedWriter> DigestedWriter::create(const std::filesystem::path& file,
                                              std::string_view line) {
  DigestedWriter writer;
  writer.file_ = file;
  writer.out_.open(unfinished(file), std::ios::binary | std::ios::trunc);
  if (auto ok = writer.write(std::string(line) + "\n"); !ok) return fail(ok.error());
  return writer;
}

Result<> DigestedWriter::write(std::string_view bytes) {
  digest_.add(bytes);
  position_ += bytes.size();
  out_.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
  if (!out_) return not_written();
  return Done{};
}

Result<> DigestedWriter::block(std::string_view bytes) {
  if (auto ok = write(length_bytes(bytes.size())); !ok) return ok;
  return write(bytes);
}

Result<> DigestedWriter::finish() {
  const Digest digest = digest_.finish();
  out_.write(reinterpret_cast<const char*>(digest.data()),
             static_cast<std::streamsize>(digest.size()));
  out_.close();
  if (!out_) return not_written();
  std::error_code failed;
  std::filesystem::rename(unfinished(file_), file_, failed);
  if (failed) return not_written();
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
  std::string found(line.size() + 1, '\0');
  reader.in_.read(found.data(), static_cast<std::streamsize>(found.size()));
  if (!reader.in_ || found != std::string(line) + "\n") return other_file(file, line);
  reader.digest_.add(found);
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

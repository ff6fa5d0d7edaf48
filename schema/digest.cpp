#include "schema/digest.h"

#include <openssl/evp.h>
#include <openssl/rand.h>

namespace kneerail {
namespace {

struct FreeKey {
  void operator()(EVP_PKEY* key) const { EVP_PKEY_free(key); }
};
struct FreeContext {
  void operator()(EVP_MD_CTX* context) const { EVP_MD_CTX_free(context); }
};
using Key = std::unique_ptr<EVP_PKEY, FreeKey>;
using Context = std::unique_ptr<EVP_MD_CTX, FreeContext>;

// Fetched once: looking the algorithm up by name at each digest costs more than a short digest.
const EVP_MD* sha256_algorithm() {
  static EVP_MD* const algorithm = EVP_MD_fetch(nullptr, "SHA256", nullptr);
  check(algorithm != nullptr, "libcrypto has SHA-256");
  return algorithm;
}

}  // namespace

struct Sha256::Inside {
  Context context{EVP_MD_CTX_new()};
  bool begun = false;

  void begin() {
    if (begun) return;
    check(EVP_DigestInit_ex2(context.get(), sha256_algorithm(), nullptr) == 1, "a digest begins");
    begun = true;
  }
};

Sha256::Sha256() : inside_(std::make_unique<Inside>()) {}
Sha256::Sha256(Sha256&&) noexcept = default;
Sha256& Sha256::operator=(Sha256&&) noexcept = default;
Sha256::~Sha256() = default;

Sha256& Sha256::add(std::span<const std::uint8_t> bytes) {
  inside_->begin();
  const int done = EVP_DigestUpdate(inside_->context.get(), bytes.data(), bytes.size());
  check(done == 1, "a digest goes on");
  return *this;
}

Sha256& Sha256::add(std::string_view text) {
  return add({reinterpret_cast<const std::uint8_t*>(text.data()), text.size()});
}

Sha256& Sha256::add(std::uint64_t number) {
  std::array<std::uint8_t, 8> bytes{};
  for (int i = 7; i >= 0; --i, number >>= 8) {
    bytes[static_cast<std::size_t>(i)] = static_cast<std::uint8_t>(number & 0xff);
  }
  return add(std::span<const std::uint8_t>(bytes));
}

Digest Sha256::finish() {
  inside_->begin();
  Digest digest{};
  unsigned length = 0;
  const int done = EVP_DigestFinal_ex(inside_->context.get(), digest.data(), &length);
  check(done == 1 && length == digest.size(), "a digest ends");
  inside_->begun = false;
  return digest;
}

Digest sha256(std::span<const std::uint8_t> bytes) {
  return Sha256().add(bytes).finish();
}

std::string to_hex(std::span<const std::uint8_t> bytes) {
  static constexpr char digits[] = "0123456789abcdef";
  std::string text;
  text.reserve(bytes.size() * 2);
  for (const std::uint8_t byte : bytes) {
    text += digits[byte >> 4];
    text += digits[byte & 15];
  }
  return text;
}

void SecureRandom::fill(std::span<std::uint8_t> bytes) {
  const int done = RAND_bytes(bytes.data(), static_cast<int>(bytes.size()));
  check(done == 1, "the operating system gives random bytes");
}

SigningKey signing_key(std::span<const std::uint8_t, 32> secret) {
  const Key key(
      EVP_PKEY_new_raw_private_key(EVP_PKEY_ED25519, nullptr, secret.data(), secret.size()));
  check(key != nullptr, "any 32 bytes make an Ed25519 key");
  SigningKey made;
  std::copy(secret.begin(), secret.end(), made.secret.begin());
  std::size_t length = made.shown.size();
  check(EVP_PKEY_get_raw_public_key(key.get(), made.shown.data(), &length) == 1,
        "an Ed25519 key has a public half");
  return made;
}

Signature sign(const SigningKey& key, std::span<const std::uint8_t> message) {
  const Key secret(EVP_PKEY_new_raw_private_key(EVP_PKEY_ED25519, nullptr, key.secret.data(),
                                                key.secret.size()));
  const Context context(EVP_MD_CTX_new());
  check(EVP_DigestSignInit(context.get(), nullptr, nullptr, nullptr, secret.get()) == 1,
        "signing begins");
  Signature signature{};
  std::size_t length = signature.size();
  const int done =
      EVP_DigestSign(context.get(), signature.data(), &length, message.data(), message.size());
  check(done == 1 && length == signature.size(), "an Ed25519 signature has 64 bytes");
  return signature;
}

bool is_signed(std::span<const std::uint8_t, 32> shown, std::span<const std::uint8_t> message,
               std::span<const std::uint8_t, 64> signature) {
  const Key key(EVP_PKEY_new_raw_public_key(EVP_PKEY_ED25519, nullptr, shown.data(), shown.size()));
  const Context context(EVP_MD_CTX_new());
  if (key == nullptr) return false;
  if (EVP_DigestVerifyInit(context.get(), nullptr, nullptr, nullptr, key.get()) != 1) return false;
  return EVP_DigestVerify(context.get(), signature.data(), signature.size(), message.data(),
                          message.size()) == 1;
}

}  // namespace kneerail

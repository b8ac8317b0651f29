#include "sync/net/identity.hpp"

#include "sync/net/tls_keys.hpp"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <openssl/ec.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <sys/stat.h>
#include <unistd.h>

namespace bullace::sync::net {

namespace {

constexpr std::size_t kGreatestPem = 16'384;

Error noRandomness() {
    return {
        ErrorCode::Internal, "This computer could not make a key. Restart it and try again.", {}};
}

Error damagedKey(const std::string& path) {
    return {
        ErrorCode::Damaged,
        "The key file " + path +
            " holds no key of this program. Restore it from a backup; a new key would have to be "
            "paired again.",
        {}};
}

Error ioError(const std::string& what, const std::string& path) {
    const int code = errno;
    return {code == ENOSPC ? ErrorCode::DiskFull : ErrorCode::Io,
            what + " " + path + ". Check the folder, its rights and the room on the disk.",
            std::strerror(code)};
}

// Closes a file however its function ends.
class File {
public:
    explicit File(int descriptor) : descriptor_(descriptor) {}
    ~File() {
        if (descriptor_ >= 0) {
            ::close(descriptor_);
        }
    }
    File(const File&) = delete;
    File& operator=(const File&) = delete;
    [[nodiscard]] int get() const { return descriptor_; }
    [[nodiscard]] bool isOpen() const { return descriptor_ >= 0; }

private:
    int descriptor_;
};

bool writeAll(int descriptor, BytesView bytes) {
    while (!bytes.empty()) {
        const ssize_t written = ::write(descriptor, bytes.data(), bytes.size());
        if (written < 0) {
            return false;
        }
        bytes.remove_prefix(static_cast<std::size_t>(written));
    }
    return ::fsync(descriptor) == 0;
}

bool syncFolderOf(const std::string& path) {
    const std::size_t slash = path.rfind('/');
    const std::string folder = slash == std::string::npos ? "." : path.substr(0, slash + 1);
    const File file(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
    return file.isOpen() && ::fsync(file.get()) == 0;
}

X509Ptr selfSigned(EVP_PKEY* key) {
    X509Ptr certificate(X509_new());
    if (!certificate || X509_set_version(certificate.get(), X509_VERSION_3) != 1 ||
        ASN1_INTEGER_set(X509_get_serialNumber(certificate.get()), 1) != 1 ||
        ASN1_TIME_set_string(X509_getm_notBefore(certificate.get()), "19700101000000Z") != 1 ||
        ASN1_TIME_set_string(X509_getm_notAfter(certificate.get()), "99991231235959Z") != 1 ||
        X509_set_pubkey(certificate.get(), key) != 1) {
        return nullptr;
    }
    X509_NAME* name = X509_get_subject_name(certificate.get());
    const auto* common = reinterpret_cast<const unsigned char*>("bullace");
    if (X509_NAME_add_entry_by_txt(name, "CN", MBSTRING_ASC, common, -1, -1, 0) != 1 ||
        X509_set_issuer_name(certificate.get(), name) != 1 ||
        X509_sign(certificate.get(), key, EVP_sha256()) == 0) {
        return nullptr;
    }
    return certificate;
}

std::string contentOf(BIO* memory) {
    char* data = nullptr;
    const long size = BIO_get_mem_data(memory, &data);
    return size > 0 ? std::string(data, static_cast<std::size_t>(size)) : std::string();
}

Result<Identity> identityOf(std::string pem, const std::string& path) {
    const KeyPtr key = keyOf(pem);
    const X509Ptr certificate = certificateOf(pem);
    if (!key || !certificate || X509_check_private_key(certificate.get(), key.get()) != 1 ||
        !isP256(key.get())) {
        return damagedKey(path);
    }
    return Identity{std::move(pem), keyHashOf(certificate.get())};
}

} // namespace

Result<Bytes> randomBytes(std::size_t number) {
    Bytes bytes(number, '\0');
    if (RAND_bytes(reinterpret_cast<unsigned char*>(bytes.data()), static_cast<int>(number)) != 1) {
        return noRandomness();
    }
    return bytes;
}

Result<Identity> makeIdentity() {
    const KeyPtr key(EVP_EC_gen("P-256"));
    const X509Ptr certificate = key ? selfSigned(key.get()) : nullptr;
    const BioPtr memory(BIO_new(BIO_s_mem()));
    if (!certificate || !memory ||
        PEM_write_bio_PrivateKey(memory.get(), key.get(), nullptr, nullptr, 0, nullptr, nullptr) !=
            1 ||
        PEM_write_bio_X509(memory.get(), certificate.get()) != 1) {
        return noRandomness();
    }
    return Identity{contentOf(memory.get()), keyHashOf(certificate.get())};
}

Result<Identity> loadIdentity(const std::string& path) {
    const File file(::open(path.c_str(), O_RDONLY | O_CLOEXEC));
    if (!file.isOpen()) {
        Error error = ioError("There is no reading the key file", path);
        error.code = errno == ENOENT ? ErrorCode::NotFound : ErrorCode::Io;
        return error;
    }
    std::string pem(kGreatestPem, '\0');
    std::size_t size = 0;
    while (size < pem.size()) {
        const ssize_t part = ::read(file.get(), pem.data() + size, pem.size() - size);
        if (part < 0) {
            return ioError("There is no reading the key file", path);
        }
        if (part == 0) {
            break;
        }
        size += static_cast<std::size_t>(part);
    }
    // Whoever copied it here may have left it open to others.
    if (::fchmod(file.get(), S_IRUSR | S_IWUSR) != 0) {
        errno = 0; // not ours to change: a read-only medium, or root's file
    }
    pem.resize(size);
    return identityOf(std::move(pem), path);
}

Result<Identity> loadOrMakeIdentity(const std::string& path) {
    if (::access(path.c_str(), F_OK) == 0) {
        return loadIdentity(path);
    }
    auto identity = makeIdentity();
    if (!identity) {
        return identity;
    }
    const std::string draft = path + ".new";
    {
        const File file(
            ::open(draft.c_str(), O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, S_IRUSR | S_IWUSR));
        if (!file.isOpen() || ::fchmod(file.get(), S_IRUSR | S_IWUSR) != 0 ||
            !writeAll(file.get(), identity->pem)) {
            return ioError("There is no writing the key file", path);
        }
    }
    // link() does not replace a key that another program made meanwhile.
    const bool isLinked = ::link(draft.c_str(), path.c_str()) == 0;
    const bool isThere = isLinked || errno == EEXIST;
    ::unlink(draft.c_str());
    if (!isThere || !syncFolderOf(path)) {
        return ioError("There is no writing the key file", path);
    }
    return isLinked ? std::move(identity) : loadIdentity(path);
}

} // namespace bullace::sync::net

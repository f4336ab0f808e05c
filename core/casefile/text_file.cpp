#include "core/casefile/text_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <utility>
#include <vector>

#include "core/base/error.h"

namespace drapewright::casefile {
namespace {

namespace fs = std::filesystem;

/// A file descriptor that closes itself.
class Descriptor {
 public:
  explicit Descriptor(int number) : number_(number) {}
  ~Descriptor() {
    if (number_ > STDERR_FILENO) ::close(number_);
  }
  Descriptor(const Descriptor&) = delete;
  Descriptor& operator=(const Descriptor&) = delete;
  int number() const { return number_; }
  /// Closes now, since closing can still report a failed write. True when it went well.
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

std::string reason(int error) {
  switch (error) {
    case ENOENT:
      return "there is no such file or folder";
    case EACCES:
    case EPERM:
      return "permission is denied";
    case ENOSPC:
    case EDQUOT:
      return "the disk is full";
    case EROFS:
      return "the disk is read-only";
    default:
      return std::strerror(error);  // NOLINT(concurrency-mt-unsafe): the text is copied at once
  }
}

[[noreturn]] void fail_reading(const fs::path& path, int error) {
  const std::string expected = error == EISDIR   ? "a file"
                               : error == ENOENT ? "a file that exists"
                                                 : "a file that can be read";
  const std::string problem =
      error == EISDIR ? "this is a folder" : "cannot be read: " + reason(error);
  throw InputError(problem, expected, {.file = path.string()});
}

std::string in_megabytes(std::uintmax_t bytes) { return std::to_string(bytes >> 20) + " MB"; }

[[noreturn]] void fail_writing(const fs::path& path, int error) {
  const bool full = error == ENOSPC || error == EDQUOT;
  throw InputError("not saved: " + reason(error),
                   std::string(full ? "free space on that disk, or another place to save to"
                                    : "a folder that exists and may be written to") +
                       "; what was there before is untouched",
                   {.file = path.string()});
}

/// Writes all of it. Returns 0 or the error.
int write_all(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

/// The file itself where `path` is a link, even one whose target is not there yet.
fs::path target_of(fs::path path) {
  std::error_code error;
  for (int links = 0; links < 40 && fs::is_symlink(path, error); ++links) {
    const fs::path target = fs::read_symlink(path, error);
    if (error) break;
    path = target.is_absolute() ? target : path.parent_path() / target;
  }
  return path;
}

fs::path folder_of(const fs::path& path) {
  return path.has_parent_path() ? path.parent_path() : fs::path(".");
}

mode_t mode_for_new_files() {
  const mode_t mask = ::umask(0);
  ::umask(mask);
  return static_cast<mode_t>(0666 & ~mask);
}

/// Gives the new file what the old one had. Only the administrator may give a file away, so the
/// owner is kept where that is possible and let go where it is not.
int take_over_permissions(int descriptor, const struct stat* old) {
  if (old == nullptr) return ::fchmod(descriptor, mode_for_new_files()) == 0 ? 0 : errno;
  [[maybe_unused]] const int given = ::fchown(descriptor, old->st_uid, old->st_gid);
  return ::fchmod(descriptor, old->st_mode & 07777) == 0 ? 0 : errno;
}

/// Fills the file beside the target and makes sure that it is on the disk. Returns 0 or the error.
int fill(Descriptor& file, std::string_view text, const struct stat* old) {
  if (const int error = write_all(file.number(), text)) return error;
  if (const int error = take_over_permissions(file.number(), old)) return error;
  if (::fsync(file.number()) != 0) return errno;
  return file.close() ? 0 : errno;
}

void replace(const fs::path& path, std::string_view text, const struct stat* old,
             const fs::path& named) {
  std::string beside = (folder_of(path) / ("." + path.filename().string() + ".XXXXXX")).string();
  Descriptor file(::mkostemp(beside.data(), O_CLOEXEC));
  if (file.number() < 0) fail_writing(named, errno);
  int error = fill(file, text, old);
  if (error == 0 && ::rename(beside.c_str(), path.c_str()) != 0) error = errno;
  if (error != 0) {
    ::unlink(beside.c_str());
    fail_writing(named, error);
  }
  // The new file is in place; that its name outlives a power cut is worth asking for, but a folder
  // that cannot be flushed (some network disks) is no failed save.
  const Descriptor folder(::open(folder_of(path).c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (folder.number() >= 0) ::fsync(folder.number());
}

}  // namespace

std::string read_text(const fs::path& path, std::uintmax_t most) {
  const bool standard_input = path == "-";
  const Descriptor file(standard_input ? STDIN_FILENO : ::open(path.c_str(), O_RDONLY | O_CLOEXEC));
  if (file.number() < 0) fail_reading(path, errno);
  std::string text;
  std::vector<char> chunk(1 << 16);
  for (;;) {
    const ssize_t got = ::read(file.number(), chunk.data(), chunk.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) fail_reading(path, errno);
    if (got == 0) return text;
    text.append(chunk.data(), static_cast<std::size_t>(got));
    if (text.size() > most) {
      struct stat status {};
      const bool known = ::fstat(file.number(), &status) == 0 && S_ISREG(status.st_mode);
      throw InputError(
          known ? "the file has " + in_megabytes(static_cast<std::uintmax_t>(status.st_size))
                : "the input has more than " + in_megabytes(most),
          "at most " + in_megabytes(most), {.file = path.string()});
    }
  }
}

void write_text(const fs::path& path, std::string_view text) {
  if (path == "-") {
    if (const int error = write_all(STDOUT_FILENO, text)) fail_writing(path, error);
    return;
  }
  const fs::path target = target_of(path);
  struct stat old {};
  const bool exists = ::stat(target.c_str(), &old) == 0;
  if (!exists) return replace(target, text, nullptr, path);
  if (S_ISDIR(old.st_mode)) {
    throw InputError("not saved: this is a folder", "the name of a file", {.file = path.string()});
  }
  if (!S_ISREG(old.st_mode)) {
    const Descriptor device(::open(target.c_str(), O_WRONLY | O_CLOEXEC));
    if (device.number() < 0) fail_writing(path, errno);
    if (const int error = write_all(device.number(), text)) fail_writing(path, error);
    return;
  }
  if (::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0) {
    throw InputError("not saved: the file is write-protected",
                     "another name to save to, or the protection lifted", {.file = path.string()});
  }
  replace(target, text, &old, path);
}

}  // namespace drapewright::casefile

#include "core/casefile/text_file.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstdlib>
#include <cstring>
#include <optional>
#include <utility>
#include <vector>

#include "core/base/error.h"
#include "core/base/say.h"

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
  Descriptor(Descriptor&& other) noexcept : number_(std::exchange(other.number_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(number_, other.number_);
    return *this;
  }
  int number() const { return number_; }
  /// Closes now, since closing can still report a failed write. True when it went well.
  bool close() { return ::close(std::exchange(number_, -1)) == 0; }

 private:
  int number_;
};

std::string reason(int error) {
  switch (error) {
    case ENOENT:
      return say("there is no such file or folder");
    case EACCES:
    case EPERM:
      return say("permission is denied");
    case ENOSPC:
    case EDQUOT:
      return say("the disk is full");
    case EROFS:
      return say("the disk is read-only");
    default:
      return std::strerror(error);  // NOLINT(concurrency-mt-unsafe): the text is copied at once
  }
}

[[noreturn]] void fail_reading(const fs::path& path, int error) {
  const std::string expected = error == EISDIR   ? say("a file")
                               : error == ENOENT ? say("a file that exists")
                                                 : say("a file that can be read");
  const std::string problem =
      error == EISDIR ? say("this is a folder") : say("cannot be read: {1}", {reason(error)});
  throw InputError(problem, expected, {.file = path.string()});
}

std::string in_megabytes(std::uintmax_t bytes) { return std::to_string(bytes >> 20) + " MB"; }

[[noreturn]] void fail_writing(const fs::path& path, int error) {
  const bool full = error == ENOSPC || error == EDQUOT;
  throw InputError(say("not saved: {1}", {reason(error)}),
                   full ? say("free space on that disk, or another place to save to; what was "
                              "there before is untouched")
                        : say("a folder that exists and may be written to; what was there before "
                              "is untouched"),
                   {.file = path.string()});
}

/// For standard output, a device or a pipe, where nothing is saved.
[[noreturn]] void fail_passing_on(const fs::path& path, int error) {
  throw InputError(say("cannot be written to: {1}", {reason(error)}),
                   say("an output that takes all of it"), {.file = path.string()});
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
int take_over_permissions(int descriptor, const std::optional<struct stat>& old) {
  if (!old) return ::fchmod(descriptor, mode_for_new_files()) == 0 ? 0 : errno;
  [[maybe_unused]] const int given = ::fchown(descriptor, old->st_uid, old->st_gid);
  return ::fchmod(descriptor, old->st_mode & 07777) == 0 ? 0 : errno;
}

/// What stands at the target now; nothing when there is no file yet.
/// @throws InputError when it cannot be replaced
std::optional<struct stat> old_file(const fs::path& target, const fs::path& named) {
  struct stat old {};
  if (::stat(target.c_str(), &old) != 0) return std::nullopt;
  if (S_ISDIR(old.st_mode)) {
    throw InputError(say("not saved: this is a folder"), say("the name of a file"),
                     {.file = named.string()});
  }
  if (S_ISREG(old.st_mode) && ::faccessat(AT_FDCWD, target.c_str(), W_OK, AT_EACCESS) != 0) {
    throw InputError(say("not saved: the file is write-protected"),
                     say("another name to save to, or the protection lifted"),
                     {.file = named.string()});
  }
  return old;
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
      throw InputError(known ? say("the file has {1}",
                                   {in_megabytes(static_cast<std::uintmax_t>(status.st_size))})
                             : say("the input has more than {1}", {in_megabytes(most)}),
                       say("at most {1}", {in_megabytes(most)}), {.file = path.string()});
    }
  }
}

struct FileReplacement::Impl {
  fs::path named;      ///< as the user named it
  fs::path target;     ///< behind any links
  std::string beside;  ///< the file that is filled; empty when `file` is written to as it is
  std::optional<struct stat> old;
  Descriptor file{-1};
};

FileReplacement::FileReplacement(const fs::path& path) : impl_(std::make_unique<Impl>()) {
  impl_->named = path;
  if (path == "-") {
    impl_->file = Descriptor(STDOUT_FILENO);
    return;
  }
  impl_->target = target_of(path);
  impl_->old = old_file(impl_->target, path);
  if (impl_->old && !S_ISREG(impl_->old->st_mode)) {
    impl_->file = Descriptor(::open(impl_->target.c_str(), O_WRONLY | O_CLOEXEC));
  } else {
    const fs::path& target = impl_->target;
    std::string beside =
        (folder_of(target) / ("." + target.filename().string() + ".XXXXXX")).string();
    impl_->file = Descriptor(::mkostemp(beside.data(), O_CLOEXEC));
    if (impl_->file.number() >= 0) impl_->beside = beside;
  }
  if (impl_->file.number() < 0) fail_writing(path, errno);
}

FileReplacement::~FileReplacement() {
  if (impl_ && !impl_->beside.empty()) ::unlink(impl_->beside.c_str());
}

FileReplacement::FileReplacement(FileReplacement&&) noexcept = default;

void FileReplacement::write(std::string_view text) {
  const int error = write_all(impl_->file.number(), text);
  if (error == 0) return;
  if (impl_->beside.empty()) fail_passing_on(impl_->named, error);
  fail_writing(impl_->named, error);
}

void FileReplacement::commit() {
  if (impl_->beside.empty()) return;
  const int file = impl_->file.number();
  if (const int error = take_over_permissions(file, impl_->old)) fail_writing(impl_->named, error);
  if (::fsync(file) != 0 || !impl_->file.close()) fail_writing(impl_->named, errno);
  if (::rename(impl_->beside.c_str(), impl_->target.c_str()) != 0) {
    fail_writing(impl_->named, errno);
  }
  impl_->beside.clear();
  // The new file is in place; that its name outlives a power cut is worth asking for, but a folder
  // that cannot be flushed (some network disks) is no failed save.
  const fs::path folder = folder_of(impl_->target);
  const Descriptor holder(::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC));
  if (holder.number() >= 0) ::fsync(holder.number());
}

void write_text(const fs::path& path, std::string_view text) {
  FileReplacement file(path);
  file.write(text);
  file.commit();
}

}  // namespace drapewright::casefile

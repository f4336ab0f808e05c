#include "core/casefile/text_file.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <unistd.h>

#include <csignal>
#include <cstdlib>
#include <fstream>

#include "core/base/error.h"
#include "core/casefile/case_json.h"
#include "tests/support/example_case.h"

namespace drapewright::casefile {
namespace {

using support::example_case;

namespace fs = std::filesystem;
using testing::HasSubstr;

/// A folder of its own for each test.
class TextFile : public testing::Test {
 protected:
  TextFile() {
    std::string name = (fs::temp_directory_path() / "drapewright-test-XXXXXX").string();
    folder_ = ::mkdtemp(name.data());
  }
  ~TextFile() override {
    fs::permissions(folder_, fs::perms::owner_all);
    fs::remove_all(folder_);
  }

  fs::path put(const std::string& name, const std::string& text) const {
    std::ofstream(folder_ / name, std::ios::binary) << text;
    return folder_ / name;
  }
  static std::string get(const fs::path& path) { return read_text(path, 1 << 20); }
  std::ptrdiff_t files() const {
    return std::distance(fs::directory_iterator(folder_), fs::directory_iterator());
  }

  fs::path folder_;
};

/// Runs `job` without the administrator's rights, under which nothing is denied.
template <typename Job>
void without_privileges(const fs::path& folder, Job job) {
  const bool root = ::geteuid() == 0;
  if (root) {
    ASSERT_EQ(::chown(folder.c_str(), 65534, 65534), 0);
    ASSERT_EQ(::seteuid(65534), 0);
  }
  job();
  if (root) {
    ASSERT_EQ(::seteuid(0), 0);
  }
}

template <typename Job>
std::string fault_of(Job job) {
  try {
    job();
  } catch (const InputError& fault) {
    return fault.what();
  }
  return "no fault";
}

TEST_F(TextFile, IsReadAsItIs) {
  const std::string text("a\r\n\0b", 5);
  EXPECT_EQ(get(put("a", text)), text);
}

TEST_F(TextFile, ThatIsNotThereIsNamed) {
  EXPECT_THAT(fault_of([&] { get(folder_ / "none.json"); }),
              testing::AllOf(HasSubstr("none.json: "), HasSubstr("no such file"),
                             HasSubstr("expected a file that exists")));
}

TEST_F(TextFile, ThatIsAFolderIsRefused) {
  EXPECT_THAT(fault_of([&] { get(folder_); }), HasSubstr("this is a folder; expected a file"));
  EXPECT_THAT(fault_of([&] { write_text(folder_, "x"); }), HasSubstr("this is a folder"));
}

TEST_F(TextFile, ThatMayNotBeReadIsRefused) {
  const fs::path path = put("secret.json", "{}");
  fs::permissions(path, fs::perms::none);
  without_privileges(folder_, [&] {
    EXPECT_THAT(fault_of([&] { get(path); }), HasSubstr("permission is denied"));
  });
}

TEST_F(TextFile, ThatIsTooLongIsRefusedAtOnce) {
  const fs::path path = put("large.json", "");
  fs::resize_file(path, 50 << 20);
  EXPECT_THAT(fault_of([&] { read_case(path); }),
              testing::AllOf(HasSubstr("the file has 50 MB"), HasSubstr("at most 16 MB")));
  EXPECT_THAT(fault_of([&] { read_text("/dev/zero", 1 << 20); }), HasSubstr("more than 1 MB"));
}

TEST_F(TextFile, IsWrittenWhole) {
  const fs::path path = folder_ / "new.json";
  write_text(path, "one");
  EXPECT_EQ(get(path), "one");
  write_text(path, "two");
  EXPECT_EQ(get(path), "two");
  EXPECT_EQ(files(), 1);
}

TEST_F(TextFile, KeepsItsPermissions) {
  const fs::path path = put("a.json", "old");
  for (const unsigned mode : {0600u, 0664u, 0755u}) {
    fs::permissions(path, static_cast<fs::perms>(mode));
    write_text(path, "new");
    EXPECT_EQ(static_cast<unsigned>(fs::status(path).permissions()), mode);
  }
}

TEST_F(TextFile, NewOnesFollowTheMaskForNewFiles) {
  const mode_t old = ::umask(027);
  write_text(folder_ / "a.json", "x");
  ::umask(old);
  EXPECT_EQ(static_cast<unsigned>(fs::status(folder_ / "a.json").permissions()), 0640u);
}

TEST_F(TextFile, BehindALinkIsReplacedAndTheLinkIsKept) {
  fs::create_directory(folder_ / "deep");
  const fs::path path = put("deep/real.json", "old");
  fs::create_symlink("deep/real.json", folder_ / "link.json");
  fs::create_symlink("link.json", folder_ / "link of link.json");
  write_text(folder_ / "link of link.json", "new");
  EXPECT_TRUE(fs::is_symlink(folder_ / "link.json"));
  EXPECT_TRUE(fs::is_symlink(folder_ / "link of link.json"));
  EXPECT_EQ(get(path), "new");
}

TEST_F(TextFile, BehindALinkIsMadeWhereItIsNotThereYet) {
  fs::create_symlink("later.json", folder_ / "link.json");
  write_text(folder_ / "link.json", "new");
  EXPECT_TRUE(fs::is_symlink(folder_ / "link.json"));
  EXPECT_EQ(get(folder_ / "later.json"), "new");
}

TEST_F(TextFile, StaysWhenTheFolderMayNotBeWrittenTo) {
  const fs::path path = put("a.json", "old");
  fs::permissions(path, static_cast<fs::perms>(0666));
  without_privileges(folder_, [&] {
    fs::permissions(folder_, static_cast<fs::perms>(0555));
    EXPECT_THAT(
        fault_of([&] { write_text(path, "new"); }),
        testing::AllOf(HasSubstr("not saved: permission is denied"), HasSubstr("untouched")));
  });
  EXPECT_EQ(get(path), "old");
  EXPECT_EQ(files(), 1);
}

TEST_F(TextFile, ThatIsWriteProtectedIsLeftAlone) {
  const fs::path path = put("a.json", "old");
  fs::permissions(path, static_cast<fs::perms>(0444));
  without_privileges(folder_, [&] {
    EXPECT_THAT(fault_of([&] { write_text(path, "new"); }), HasSubstr("write-protected"));
  });
  EXPECT_EQ(get(path), "old");
}

TEST_F(TextFile, SaysWhenTheFolderIsGone) {
  EXPECT_THAT(fault_of([&] { write_text(folder_ / "gone" / "a.json", "x"); }),
              testing::AllOf(HasSubstr("not saved"), HasSubstr("a folder that exists")));
}

/// A limit on the size of files stands in for a full disk: the write fails in the same place.
[[noreturn]] void save_onto_a_full_disk(const fs::path& path) {
  ::signal(SIGXFSZ, SIG_IGN);
  const struct rlimit limit { 1000, 1000 };
  ::setrlimit(RLIMIT_FSIZE, &limit);
  const std::string line = fault_of([&] { write_text(path, std::string(5000, 'x')); });
  std::_Exit(line.find("not saved") != std::string::npos ? 0 : 1);
}

TEST_F(TextFile, StaysWhenTheDiskIsFull) {
  const fs::path path = put("a.json", "old");
  EXPECT_EXIT(save_onto_a_full_disk(path), testing::ExitedWithCode(0), "");
  EXPECT_EQ(get(path), "old");
  EXPECT_EQ(files(), 1);
}

TEST_F(TextFile, MayBeADevice) {
  EXPECT_NO_THROW(write_text("/dev/null", "x"));
  EXPECT_TRUE(fs::is_character_file("/dev/null"));
  EXPECT_THAT(fault_of([] { write_text("/dev/full", "x"); }), HasSubstr("the disk is full"));
}

TEST_F(TextFile, HoldsACaseThatReadsBack) {
  const wound::Case value = case_from_json(example_case());
  write_case(folder_ / "case.json", value);
  EXPECT_EQ(read_case(folder_ / "case.json"), value);
}

}  // namespace
}  // namespace drapewright::casefile

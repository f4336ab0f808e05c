// One application for all tests of the program, without a display.
#include <gtest/gtest.h>

#include <QApplication>
#include <memory>

namespace {

class Offscreen : public testing::Environment {
 public:
  void SetUp() override {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    application_ = std::make_unique<QApplication>(argc_, argv_);
  }
  void TearDown() override { application_.reset(); }

 private:
  int argc_ = 1;
  char name_[5] = "test";
  char* argv_[2] = {name_, nullptr};
  std::unique_ptr<QApplication> application_;
};

const auto* const offscreen = testing::AddGlobalTestEnvironment(new Offscreen);

}  // namespace

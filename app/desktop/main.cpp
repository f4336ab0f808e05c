#include <QApplication>
#include <QCommandLineParser>
#include <QDate>
#include <QIcon>
#include <QTimer>

#include "app/desktop/window/appearance.h"
#include "app/desktop/window/file_desk.h"
#include "app/desktop/window/main_window.h"
#include "app/wording/spoken.h"

namespace {

using drapewright::spoken;

constexpr const char* first_demo = "plain-heel";

void read_arguments(QCommandLineParser& parser, const QApplication& program) {
  parser.setApplicationDescription(
      spoken("Plans a negative-pressure wound dressing from a wound's outline.\nA planning aid: the "
             "prescriber, local policy and the device's instructions decide."));
  parser.addHelpOption();
  parser.addVersionOption();
  parser.addOption({"demo", spoken("Open an invented case.")});
  parser.addPositionalArgument("case", spoken("The case file to open."), "[CASE]");
  parser.process(program);
}

}  // namespace

int main(int argc, char* argv[]) {
  QApplication program(argc, argv);
  QApplication::setApplicationName("Drapewright");
  QApplication::setOrganizationName("Drapewright");
  QApplication::setApplicationVersion(DRAPEWRIGHT_VERSION);
  QApplication::setDesktopFileName("drapewright");
  QApplication::setWindowIcon(QIcon(":/icons/drapewright.svg"));
  using namespace drapewright::desktop;
  Appearance::restore_language();
  QCommandLineParser parser;
  read_arguments(parser, program);

  Appearance::restore();
  MainWindow window(QDate::currentDate().toString(Qt::ISODate));
  window.keep_layout();
  window.show();
  // After the window is there, so that an error's dialog has something to stand on.
  QTimer::singleShot(0, &window, [&] {
    if (!parser.positionalArguments().isEmpty()) {
      window.files().open_path(parser.positionalArguments().front());
    } else if (parser.isSet("demo")) {
      window.files().open_demo(first_demo);
    }
  });
  return QApplication::exec();
}

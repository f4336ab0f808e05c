#include "app/desktop/window/file_desk.h"

#include <QBuffer>
#include <QFileDialog>
#include <QFileInfo>
#include <QMessageBox>
#include <QRegularExpression>
#include <QSaveFile>
#include <QSettings>
#include <QStandardPaths>
#include <utility>

#include "app/desktop/document/case_document.h"
#include "app/desktop/document/demo_cases.h"
#include "app/desktop/window/fault_box.h"
#include "app/printing/picture.h"
#include "app/wording/spoken.h"
#include "core/report/svg.h"

namespace drapewright::desktop {
namespace {

QString case_filter() { return spoken("Cases (*.drapewright.json *.json);;All files (*)"); }
/// What the desktop knows a case by (resources/drapewright-mime.xml).
const QString case_ending = ".drapewright.json";
const QString recent_key = "recent_files";
constexpr int most_recent = 8;
constexpr double picture_dpi = 200;

}  // namespace

FileDesk::FileDesk(CaseDocument& document, QString today, QWidget& window)
    : QObject(&window), document_(document), today_(std::move(today)), window_(window) {
  connect(&reading_, &ReadJob::finished, this, &FileDesk::take);
  connect(&reading_, &ReadJob::progressed, this, &FileDesk::reading_progressed);
}

bool FileDesk::may_leave() {
  if (!document_.is_modified()) return true;
  QMessageBox box(
      QMessageBox::Question, "Drapewright",
      spoken("Save the changes to “{1}”?", {QString::fromStdString(document_.value().label)}),
      QMessageBox::Save | QMessageBox::Discard | QMessageBox::Cancel, &window_);
  box.setObjectName("unsaved");
  box.setInformativeText(spoken("Without saving, they are lost."));
  box.setDefaultButton(QMessageBox::Save);
  const int answer = box.exec();
  if (answer == QMessageBox::Save) return save();
  return answer == QMessageBox::Discard;
}

void FileDesk::start_new() {
  if (!may_leave()) return;
  cancel_reading();
  document_.start_new(today_);
}

void FileDesk::open() {
  if (!may_leave()) return;
  const QString path =
      QFileDialog::getOpenFileName(&window_, spoken("Open a case"), folder(), case_filter());
  if (!path.isEmpty()) open_path(path);
}

void FileDesk::open_path(const QString& path) {
  left_ = document_.shared();
  reading_.request(path);
  emit reading_started(path);
}

void FileDesk::cancel_reading() {
  if (!is_reading()) return;
  reading_.cancel();
  emit reading_ended(false);
}

void FileDesk::take(const ReadResult& result) { emit reading_ended(open_read(result)); }

bool FileDesk::open_read(const ReadResult& result) {
  if (result.fault) {
    show_fault(&window_, spoken("“{1}” cannot be opened.", {QFileInfo(result.path).fileName()}),
               *result.fault, spoken("The open case is as it was."));
    return false;
  }
  // Work that was done while the file was being read is asked for, too.
  if (document_.shared() != left_ && !may_leave()) return false;
  document_.open(*result.value, result.path);
  remember(result.path);
  return true;
}

bool FileDesk::open_demo(const QString& name) {
  if (!may_leave()) return false;
  cancel_reading();
  try {
    document_.start_from(read_demo(name));
  } catch (const InputError& error) {
    show_fault(&window_, spoken("The demo cannot be opened."), error,
               spoken("The open case is as it was."));
    return false;
  }
  return true;
}

bool FileDesk::save() { return document_.path().isEmpty() ? save_as() : save_to(document_.path()); }

bool FileDesk::save_as() {
  QFileDialog dialog(&window_, spoken("Save the case as"), folder(), case_filter());
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix("json");
  dialog.selectFile(suggested_path(case_ending));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return false;
  return save_to(dialog.selectedFiles().front());
}

QString FileDesk::ask_photo() {
  return QFileDialog::getOpenFileName(&window_, spoken("Open a photograph"), folder(),
                                      spoken("Pictures (*.png *.jpg *.jpeg);;All files (*)"));
}

bool FileDesk::save_to(const QString& path) {
  try {
    if (companion_) companion_(path);
    document_.save_as(path);
  } catch (const InputError& error) {
    show_fault(&window_, spoken("“{1}” was not saved.", {QFileInfo(path).fileName()}), error,
               spoken("The file is as it was, and nothing in the window is lost."));
    return false;
  }
  remember(path);
  return true;
}

QString FileDesk::ask_place(const QString& title, const QString& filter, const QString& suffix,
                            const QString& ending) {
  QFileDialog dialog(&window_, title, folder(), filter);
  dialog.setAcceptMode(QFileDialog::AcceptSave);
  dialog.setDefaultSuffix(suffix);
  dialog.selectFile(suggested_path(ending));
  if (dialog.exec() != QDialog::Accepted || dialog.selectedFiles().isEmpty()) return {};
  return dialog.selectedFiles().front();
}

void FileDesk::write(const QString& path, const QByteArray& bytes) {
  QSaveFile file(path);
  if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit()) {
    show_fault(&window_, spoken("“{1}” was not saved.", {QFileInfo(path).fileName()}),
               InputError(file.errorString().toStdString(), say("a folder that can be written to")),
               spoken("The file is as it was."));
  }
}

void FileDesk::save_list(const QByteArray& csv) {
  const QString path =
      ask_place(spoken("Save the materials list as"),
                spoken("Comma-separated values (*.csv);;All files (*)"), "csv", "-materials.csv");
  if (!path.isEmpty()) write(path, csv);
}

void FileDesk::save_picture(const report::Drawing& drawing) {
  const QString path = ask_place(spoken("Save the drawing as"), spoken("SVG (*.svg);;PNG (*.png)"),
                                 "svg", "-drawing.svg");
  if (path.isEmpty()) return;
  if (!path.endsWith(".png", Qt::CaseInsensitive)) {
    return write(path, QByteArray::fromStdString(report::to_svg(drawing)));
  }
  QBuffer png;
  png.open(QIODevice::WriteOnly);
  printing::to_picture(drawing, picture_dpi).save(&png, "PNG");
  write(path, png.data());
}

void FileDesk::save_pdf(const QByteArray& pdf) {
  const QString path = ask_place(spoken("Save the pages as"), spoken("PDF (*.pdf);;All files (*)"),
                                 "pdf", "-pages.pdf");
  if (!path.isEmpty()) write(path, pdf);
}

QStringList FileDesk::recent() const { return QSettings().value(recent_key).toStringList(); }

void FileDesk::remember(const QString& path) {
  QStringList all = recent();
  const QString full = QFileInfo(path).absoluteFilePath();
  all.removeAll(full);
  all.prepend(full);
  QSettings().setValue(recent_key, all.mid(0, most_recent));
  emit recent_changed();
}

QString FileDesk::folder() const {
  if (!document_.path().isEmpty()) return QFileInfo(document_.path()).absolutePath();
  return QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
}

QString FileDesk::suggested_path(const QString& ending) const {
  static const QRegularExpression unfit("[^\\w]+", QRegularExpression::UseUnicodePropertiesOption);
  if (document_.path().isEmpty()) {
    return QString::fromStdString(document_.value().label).replace(unfit, "-") + ending;
  }
  const QFileInfo file(document_.path());
  return (file.fileName().endsWith(case_ending) ? file.fileName().chopped(case_ending.size())
                                                : file.completeBaseName()) +
         ending;
}

}  // namespace drapewright::desktop

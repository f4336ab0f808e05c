#pragma once

#include <QObject>
#include <QStringList>
#include <functional>

#include "app/desktop/jobs/read_job.h"
#include "core/report/drawing.h"

class QWidget;

namespace drapewright::desktop {

class CaseDocument;

/// Opens and saves, with every question about losing work. A failed open or save leaves the open
/// case as it was, and says why.
class FileDesk : public QObject {
  Q_OBJECT

 public:
  FileDesk(CaseDocument& document, QString today, QWidget& window);

  /// Asks when there are unsaved changes. False: the user wants to stay.
  bool may_leave();
  /// Reads the file in the background; the open case stays until the new one is good. `read` tells
  /// the end.
  void open_path(const QString& path);
  bool is_reading() const { return reading_.is_busy(); }
  bool open_demo(const QString& name);
  QStringList recent() const;
  /// Where files of this case are looked for first.
  QString folder() const;
  /// A name for a file that comes of this case, by the case's own.
  QString suggested_path(const QString& ending) const;
  /// What else is written beside a case that is saved; it throws InputError where it cannot be.
  void set_companion(std::function<void(const QString& case_path)> write) {
    companion_ = std::move(write);
  }
  /// Asks where to save what comes of this case. @param suffix  where the name has none
  /// @return empty when no place was chosen
  QString ask_place(const QString& title, const QString& filter, const QString& suffix,
                    const QString& ending);
  /// Puts the bytes in the place of a file, or says why it cannot.
  void write(const QString& path, const QByteArray& bytes);
  /// Asks for a picture. @return empty when none was chosen
  QString ask_photo();

 public slots:
  void start_new();
  void open();
  bool save();
  bool save_as();
  /// Asks for a place and writes the bytes there.
  void save_list(const QByteArray& csv);
  /// Asks for a place and writes the drawing there: as PNG where the name says so, else as SVG.
  void save_picture(const report::Drawing& drawing);
  /// Asks for a place and writes the pages there.
  void save_pdf(const QByteArray& pdf);
  void cancel_reading();

 signals:
  /// A file is being read.
  void reading_started(const QString& path);
  void reading_progressed(double fraction);
  /// It was opened, could not be, or is no longer wanted.
  void reading_ended(bool opened);
  void recent_changed();

 private:
  void take(const ReadResult& result);
  bool open_read(const ReadResult& result);
  bool save_to(const QString& path);
  void remember(const QString& path);

  CaseDocument& document_;
  QString today_;
  QWidget& window_;
  ReadJob reading_;
  std::function<void(const QString&)> companion_;
  std::shared_ptr<const wound::Case> left_;  ///< the case that was given up for the file being read
};

}  // namespace drapewright::desktop

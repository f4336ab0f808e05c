#pragma once

#include <QObject>
#include <QStringList>

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
  bool open_path(const QString& path);
  bool open_demo(const QString& name);
  QStringList recent() const;

 public slots:
  void start_new();
  void open();
  bool save();
  bool save_as();
  /// Asks for a place and writes the bytes there.
  void save_list(const QByteArray& csv);

 signals:
  void recent_changed();

 private:
  bool save_to(const QString& path);
  void remember(const QString& path);
  QString folder() const;
  QString suggested_path(const QString& ending) const;

  CaseDocument& document_;
  QString today_;
  QWidget& window_;
};

}  // namespace drapewright::desktop

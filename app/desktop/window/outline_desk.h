#pragma once

#include <QObject>

class QWidget;

namespace drapewright::desktop {

class CaseDocument;
class FileDesk;

/// Outlines from other programs' files into the case, and the case's outlines out to such files.
class OutlineDesk : public QObject {
  Q_OBJECT

 public:
  OutlineDesk(CaseDocument& document, const FileDesk& files, QWidget& window);

 public slots:
  /// Adds the outlines of a file as wounds, one step of undo. Asks for the unit where the file does
  /// not say; a file that cannot be used leaves the case as it was, and is told.
  void open();
  /// The wounds' outlines as WKT, GeoJSON, SVG or CSV, by the ending of the name.
  void save_as();

 private:
  void add_from(const QString& path);

  CaseDocument& document_;
  const FileDesk& files_;
  QWidget& window_;
};

}  // namespace drapewright::desktop

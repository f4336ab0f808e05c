#pragma once

#include <QString>
#include <vector>

#include "core/dressing/plan.h"

namespace drapewright::desktop {

/// One line of the materials list, as the panel shows it and as it is copied and saved.
struct MaterialRow {
  QString item;  ///< marked where it is an estimate
  QString per_application;
  QString per_course;
  QString basis;  ///< the arithmetic in words
};

/// Titles of the four columns.
MaterialRow material_titles();
std::vector<MaterialRow> material_rows(const dressing::Plan& plan);

/// Titles and lines, tab separated, for the clipboard.
QString as_tab_separated(const std::vector<MaterialRow>& rows);
/// Titles and lines as CSV (RFC 4180: CRLF, quotes doubled), UTF-8.
QByteArray as_csv(const std::vector<MaterialRow>& rows);

}  // namespace drapewright::desktop

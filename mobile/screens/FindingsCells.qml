// Findings' cells of the title block: the site with what is open, and what is kept here.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property FindingsModel findings
    required property WalkModel walk
    property bool portrait: false

    height: parent ? parent.height : implicitHeight

    TitleCell {
        objectName: "findingsCell"
        tells: true
        caption: cells.findings.siteName
        text: cells.findings.countWords
    }

    TitleCell {
        tells: true
        visible: !cells.portrait
        caption: cells.walk.keptCaption
        text: cells.walk.keptWords
    }
}

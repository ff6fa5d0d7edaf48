// Prepare's cells of the title block: the day, and the site.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property PrepareModel prepare
    property bool portrait: false

    height: parent ? parent.height : implicitHeight

    TitleCell {
        visible: cells.prepare.known
        tells: true
        caption: qsTr("Prepare")
        text: cells.prepare.dayWords
    }

    TitleCell {
        visible: cells.prepare.known && !cells.portrait
        tells: true
        caption: qsTr("Site")
        text: cells.prepare.siteName
    }
}

// Sites' cells of the title block: whose rails these are, and what is kept here.
import QtQuick
import Kneerail.Ui

Row {
    id: cells

    required property SitesModel sites
    property bool portrait: false

    height: parent ? parent.height : implicitHeight

    TitleCell {
        visible: cells.sites.known && !cells.portrait
        tells: true
        caption: cells.sites.ownerName
        text: cells.sites.countWords
    }

    TitleCell {
        visible: cells.sites.known
        tells: true
        caption: qsTr("Kept here")
        text: cells.sites.keptWords
    }
}

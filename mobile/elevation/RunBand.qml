// A whole run as one small elevation, to be touched.
import QtQuick
import Kneerail.Ui

RunBandItem {
    id: band

    Accessible.role: Accessible.Button
    Accessible.name: band.spokenName
    Accessible.focusable: true
    Accessible.onPressAction: band.chosen()
}

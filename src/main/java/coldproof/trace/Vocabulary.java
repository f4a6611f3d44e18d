package coldproof.trace;

import java.util.Set;

/**
 * General words of the trade in headings, in English, German, French, Spanish and Italian, in small letters without accents; no program's
 * names. A star stands for any letters at that end. Common practice.
 */
final class Vocabulary {
    /** What is set, not measured, or tells of a state. */
    static final String[] NOT_MEASURED = {"limit*", "*grenze", "grenz*", "target*", "ziel*", "soll*", "request*", "setpoint", "set", "threshold*", "schwelle*", "critical",
        "crit", "cap", "tdp", "pl", "tjmax", "throttl*", "exceed*", "drossel*", "consigne", "seuil", "headroom", "margin", "distance", "delta", "warn*", "alarm*", "trip",
        "offset", "reason", "status", "flag", "error*", "fehler*", "health", "wear", "cycle*", "zyklen"};
    /** Statistics since the start, which some programs write beside the reading. */
    static final String[] STATISTIC = {"min", "max", "avg", "minimum", "maximum", "average", "mean", "mittel", "mittelwert", "moyenne", "peak", "highest", "lowest"};
    /** Parts beside the one that does the work. */
    static final String[] BESIDE = {"memory", "mem", "ram", "dram", "vram", "ddr", "dimm*", "*speicher*", "memoire", "memoria", "ssd*", "hdd*", "nvme*", "drive*", "disk*",
        "disque*", "disco*", "festplatte*", "laufwerk*", "datentrager*", "datentraeger*", "storage", "wifi", "fi", "wlan", "network*", "netzwerk*", "lan", "ethernet", "modem",
        "display*", "screen*", "backlight", "bildschirm*", "ecran*", "usb", "water", "wasser*", "coolant", "pump*", "dew", "taupunkt*", "rosee", "humid*", "*feuchte*",
        "swap", "page", "paging", "cache", "video", "media", "encoder", "decoder", "volume", "brightness", "helligkeit"};
    /** Clocks that are not the one of the part that works. */
    static final String[] OTHER_CLOCK = {"bus", "ring", "uncore", "fabric", "base", "basis*", "bclk", "ref", "reference", "nominal", "refresh", "sampling", "sample", "abtast*"};
    /** What turns or is told to turn, where the number is a share and no speed. */
    static final String[] FAN = {"fan*", "*fan", "*lufter*", "*luefter*", "ventil*", "ventol*", "blower", "geblase*"};
    /** Share of the full drive of a fan. */
    static final String[] DUTY = {"duty", "pwm", "drive", "percent", "prozent"};
    static final String[] ROTATION = {"rpm", "*drehzahl*", "tach*", "rotation"};
    static final String[] TEMPERATURE = {"temp", "*temp", "temperat*", "*temperatur*", "thermal", "therm"};
    static final String[] POWER = {"power", "*power", "pwr", "*leistung*", "puissance", "potenc*", "potenz*", "watt", "watts", "wattage", "verbrauch", "consumption",
        "consommation", "consumo", "draw"};
    static final String[] CLOCK = {"clock*", "*clock", "freq*", "*freq", "takt*", "*takt", "clk", "*clk", "*frequenz*", "frecuenc*"};
    /** What no channel measures, where no unit says so. */
    static final String[] ELECTRIC = {"volt*", "*spannung*", "tension*", "current", "strom", "*strom", "courant", "corriente", "corrente", "amper*", "energy", "energie",
        "energia", "frame*", "fps", "score", "points"};
    static final String[] UTILISATION = {"util*", "load", "loads", "*load", "usage", "busy", "*auslastung*", "last", "*last", "lastanteil", "carga", "carico", "uso",
        "activity", "occupation"};
    static final String[] BATTERY = {"batt*", "bat", "bater*", "*akku*", "accu", "ladezustand*", "ladestand*", "ladestatus"};
    /** Words for how full a battery is, which may mean something else. */
    static final String[] FULLNESS = {"charge", "*ladung*", "remaining", "capacity", "kapazitat*", "level", "niveau", "soc"};
    static final String[] CELL = {"cell", "cells", "zelle*", "charger"};
    static final String[] SURFACE = {"skin", "surface*", "case", "chassis", "lid", "palm*", "keyboard", "shell", "housing", "enclosure", "cover", "*gehause*", "*gehaeuse*",
        "*oberflache*", "*oberflaeche*", "coque*", "boitier*", "carcasa", "scocca", "tastatur*", "deckel*", "clavier*", "plate", "backplate", "bottom", "unterseite*"};
    static final String[] BOARD = {"board", "*board", "mobo", "mb", "pcb", "vrm*", "mos", "mosfet*", "chipset*", "pch", "*platine*", "carte", "placa", "scheda"};
    /** Temperatures of the device as a whole, measured on the board. */
    static final String[] SYSTEM = {"system*", "sistema*", "sys"};
    /** Air that leaves. */
    static final String[] EXHAUST = {"exhaust", "outlet", "abluft*", "auslass*"};
    static final String[] AMBIENT = {"ambien*", "ambiant*", "umgebung*", "air", "airtemp*", "aire", "aria", "room*", "raum*", "inlet", "intake", "outdoor*", "outside", "external", "env",
        "environ*", "aussen*", "luft", "*luft", "lufttemp*", "piece", "exterieur*", "exterior", "esterno", "lab", "labor", "chamber", "kammer*"};
    /** The part that does the work. */
    static final String[] PROCESSOR = {"cpu*", "gpu*", "apu", "soc", "*prozessor*", "processor*", "processeur*", "procesador*", "processore*", "package", "pkg", "paket*",
        "chip", "puce", "die", "core*", "kern", "kerne", "kerntemp*", "kerntakt*", "kernlast*", "coeur*", "nucle*", "silicon", "silizium", "junction", "hotspot", "ccd",
        "tctl", "tdie", "socket"};
    /** Processors of two kinds that one device may have. */
    static final String[] MAIN_PROCESSOR = {"cpu*", "*prozessor*", "processor*", "processeur*", "procesador*", "processore*"};
    static final String[] GRAPHICS = {"gpu*", "graphic*", "grafik*", "graphique*", "grafic*", "igpu", "dgpu"};
    static final String[] WHOLE_DEVICE = {"system*", "sistema*", "sys", "total*", "wall", "input", "adapter", "mains", "plug", "platform", "device", "whole", "gesamt*", "netz*",
        "dc", "gerat*", "geraet*", "entree", "prise", "secteur", "appareil", "dispositivo", "board"};
    static final String[] NOT_THE_WHOLE = {"charger", "discharge*", "entlad*", "decharge*", "descarga*"};
    static final String[] TIME = {"time", "*time", "time*", "zeit*", "*zeit", "elapsed", "epoch", "stamp", "datetime", "date", "datum", "tiempo", "tempo", "temps", "seconds",
        "sekunde*", "heure", "horodat*", "uhr*", "hora", "ora", "fecha", "when"};
    static final String[] COUNTER = {"index", "row", "sample", "no", "nr", "number", "id", "count", "cycle", "zeile", "ligne", "fila", "riga"};
    /** What may stand behind the letter of a symbol, as in {@code Tskin}. */
    static final Set<String> INDICES = Set.of("pkg", "package", "sys", "system", "cpu", "gpu", "soc", "die", "core", "pcb", "skin", "board", "mb", "amb", "ambient", "air", "bat",
            "batt", "case", "lid", "env", "room", "fan", "clk", "clock", "chip", "total", "tot", "dev");
    /** Likewise behind the letter of a clock or a utilisation. */
    static final Set<String> WORKING_INDICES = Set.of("cpu", "gpu", "soc", "core", "chip", "pkg", "package", "die", "clk", "clock");

    private Vocabulary() {}
}

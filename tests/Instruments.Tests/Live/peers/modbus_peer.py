"""A Modbus device on pymodbus: modbus_peer.py tcp PORT | rtu PATH. Unit 1.

Input registers 0-1: pressure as float32, high word first; 2-3: the same, low word first; 4: tenths of a bar as int16.
Holding registers 10-11: pressure in pascals as uint32. Each read of a pressure is the next value of the strokes.
"""
import struct
import sys

from pymodbus.datastore import ModbusSequentialDataBlock, ModbusServerContext, ModbusSlaveContext
from pymodbus.server import StartSerialServer, StartTcpServer
from pymodbus.transaction import ModbusRtuFramer

from strokes import Strokes


def words(form, value):
    return list(struct.unpack(">HH", struct.pack(form, value)))


class Pressure(ModbusSequentialDataBlock):
    def __init__(self, form):
        super().__init__(0, [0] * 20)
        self.strokes = Strokes()
        self.form = form

    def getValues(self, address, count=1):
        bar = self.strokes.next()
        if self.form == "holding":
            return words(">I", round(bar * 1e5))[:count] if address == 10 else [0] * count
        if address == 0:
            return words(">f", bar)[:count]
        if address == 2:
            return words(">f", bar)[::-1][:count]
        return [round(bar * 10) & 0xFFFF] * count


context = ModbusServerContext(slaves={1: ModbusSlaveContext(ir=Pressure("input"), hr=Pressure("holding"), zero_mode=True)}, single=False)
if sys.argv[1] == "tcp":
    StartTcpServer(context=context, address=("127.0.0.1", int(sys.argv[2])))
else:
    StartSerialServer(context=context, framer=ModbusRtuFramer, port=sys.argv[2], baudrate=19200, timeout=0.05)

"""Reads a Modbus TCP device by pymodbus: modbus_client.py PORT. Prints the value as float32 at input address 4, then the exceptions for what it does not have."""
import sys

from pymodbus.client import ModbusTcpClient
from pymodbus.constants import Endian
from pymodbus.payload import BinaryPayloadDecoder

client = ModbusTcpClient("127.0.0.1", port=int(sys.argv[1]))
client.connect()
value = client.read_input_registers(4, 2, slave=7)
print(f"{BinaryPayloadDecoder.fromRegisters(value.registers, byteorder=Endian.Big, wordorder=Endian.Little).decode_32bit_float():.2f}")
print(client.read_input_registers(5, 2, slave=7).exception_code)
print(client.read_holding_registers(4, 2, slave=7).exception_code)
print(client.read_input_registers(4, 1, slave=7).exception_code)
client.close()
